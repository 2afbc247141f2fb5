import { execFileSync } from "node:child_process";
import { expect, test } from "vitest";
import { peopleLines } from "../../src/audit/people-text.ts";
import { fileChecks, letterChecks, orderChecks, sheetChecks } from "../../src/checks/catalogue.ts";
import type { Check } from "../../src/checks/check.ts";
import { readPeople } from "../../src/intake/tell-people.ts";
import { isForPerson } from "../../src/judging/for-person.ts";
import { catalogue, maker } from "../make/config.ts";
import { temporaryDesk } from "../make/desk.ts";
import { post } from "../make/thread.ts";

/** Words by which an answer promises that somebody of ours acts. */
const promises =
  /\b(?:a person|somebody|one of us|we)\b[^.]*\b(?:reads?|looks?|will|writes?|settles?|decides?|calls?|sorts?|checks?)\b|\bhear from us\b/i;

const everyProblem = [
  ...fileChecks.flatMap(problemsOf),
  ...sheetChecks.flatMap(problemsOf),
  ...orderChecks.flatMap(problemsOf),
  ...letterChecks.flatMap(problemsOf),
];

/** Every problem that a failing example of a check shows, with the words that it is told in. */
function problemsOf<Subject>({ id, wordings, failing, find }: Check<Subject>) {
  const shown = failing.flatMap(({ given }) =>
    [catalogue, maker.catalogue].flatMap((one) => {
      const subject = given(one);
      return subject === undefined ? [] : [...find(subject, one)];
    }),
  );
  return shown.map((problem) => {
    const { says = "", fix = "" } = wordings[problem.wording] ?? {};
    return { id, problem, words: `${says} ${fix}` };
  });
}

test("a sheet that may belong elsewhere is named by its id, with the command that moves it", async () => {
  const desk = await temporaryDesk();
  const device = (mark: string, position: string) => ({
    mark,
    legend: ["NORTH"],
    fill: { standing: "in-plate", gangs: "2", position },
  });
  const plate = { mark: "P-104", kind: "plate", legend: ["SALON"], fill: { gangs: "2" } } as const;
  await post(desk, { sheets: [plate, device("P-104", "1"), device("P-140", "2")] });
  const waiting = await readPeople(desk.store, desk.clock.now());
  expect(peopleLines(waiting, desk.clock.now()).join("\n")).toContain(
    "\n    → if a sheet belongs elsewhere: burin settle --sheet 1/3 --station MARK, or --position N, or --order NUMBER",
  );
});

test("nothing of an order's number is run by whoever copies the command", async () => {
  const desk = await temporaryDesk();
  const order = "FM-80 $(echo owned) `echo owned` \"; echo owned '; echo owned";
  const device = (mark: string, position: string) => ({
    mark,
    legend: ["NORTH"],
    fill: { order, standing: "in-plate", gangs: "2", position },
  });
  const plate = { mark: "P-104", kind: "plate", legend: ["SALON"], fill: { order, gangs: "2" } } as const;
  await post(desk, { sheets: [plate, device("P-104", "1"), device("P-140", "2")] });
  const told = peopleLines(await readPeople(desk.store, desk.clock.now()), desk.clock.now()).join("\n");
  const [, word = ""] = /→ burin settle (.+) \d+ --yes/.exec(told) ?? [];
  expect(execFileSync("sh", ["-c", `printf %s ${word}`], { encoding: "utf8" })).toBe(order);
});

test("whatever promises that a person acts is on the people's list", () => {
  const promised = everyProblem.filter(({ words }) => promises.test(words));
  expect(new Set(promised.map(({ id }) => id)).size).toBeGreaterThan(10);
  const forgotten = promised.filter(({ problem }) => !isForPerson(problem));
  expect(forgotten.map(({ id, words }) => `${id}: ${words}`)).toEqual([]);
});
