import { expect, test } from "vitest";
import { actorLeft, isStandIn, questionName, residueOf, standInOf } from "../../src/store/residue.ts";
import type { Judged } from "../../src/store/write-judged.ts";
import type { Problem } from "../../src/trade/problem.ts";

const problem: Problem = {
  check: "spelling",
  wording: "misspelt",
  severity: "asks",
  verdict: "confirm",
  facts: { typed: "SALONA" },
  spots: [{ file: "1/2", place: "row.1.1" }, { file: "1/3" }],
};
const bare = { ...problem, facts: {} };
const names = {
  standIn: standInOf(7),
  orders: new Map([["BW2207", "order-1"]]),
  questions: new Map([[questionName("BW2207", "q"), "question-1"]]),
  addresses: new Set(["ines@brightwire.example"]),
};
const judged: Judged = {
  buyer: "ines@brightwire.example",
  changes: ["BW-2207", "KX-1185"].map((number) => ({
    number,
    project: "Larkspur Library",
    verdict: "confirm",
    missing: [{ station: "S-104", kind: "plate" }],
    sheets: ["1/2"],
    withdrawn: ["1/1"],
    carried: [
      { letter: "1", what: "words", text: "Do not cut yet." },
      { letter: "1", what: "file", text: "scan.pdf" },
    ],
    problems: [problem],
    questions: [{ key: "q", number: 3, problem, station: "S-104" }],
  })),
  about: ["bw 2207", "KX-1185"],
  settles: [
    { order: "BW-2207", key: "q" },
    { order: "BW-2207", key: "other" },
    { order: "KX-1185", key: "q" },
  ],
  decides: [{ order: "KX-1185", key: "q" }],
  kept: [{ word: "SALONA", project: "Larkspur Library" }],
};

test("of an erased person's letter it is left which order came to what, and which checks asked", () => {
  expect(residueOf(judged, names)).toStrictEqual({
    buyer: "erased-7",
    changes: [
      {
        number: "order-1",
        verdict: "confirm",
        missing: [],
        sheets: [],
        withdrawn: ["1/1"],
        carried: [{ letter: "1", what: "words", text: "" }],
        problems: [bare],
        questions: [{ key: "question-1", number: 3, problem: bare }],
      },
    ],
    about: ["order-1"],
    settles: [{ order: "order-1", key: "question-1" }],
    decides: [],
    kept: [],
  });
});

test("a change without a verdict leaves none behind", () => {
  const changes = judged.changes.map(({ verdict: _verdict, ...rest }) => rest);
  const [left] = residueOf({ ...judged, changes }, names).changes;
  expect(left).toMatchObject({ number: "order-1", withdrawn: ["1/1"] });
  expect(left).not.toHaveProperty("verdict");
});

test("whoever acted gives way where he is erased, and our own people stay", () => {
  expect(residueOf({ ...judged, by: "ines@brightwire.example" }, names).by).toBe("erased-7");
  expect(residueOf(judged, names)).not.toHaveProperty("by");
  expect(residueOf({ ...judged, by: "Rosa Imhoff" }, names).by).toBe("Rosa Imhoff");
  expect(actorLeft("ines@brightwire.example", names)).toBe("erased-7");
  expect(actorLeft("jo@oakmoor.example", names)).toBe("jo@oakmoor.example");
});

test("no address is taken for a stand-in", () => {
  expect(["erased-7", "erased-12"].map(isStandIn)).toEqual([true, true]);
  const others = ["erased-", "erased-7@x.example", "not-erased-7", "erased-7a"];
  expect(others.filter(isStandIn)).toEqual([]);
});
