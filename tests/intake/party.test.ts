import { beforeEach, describe, expect, test } from "vitest";
import type { Desk } from "../../src/intake/desk.ts";
import { colleagueNamed, partyLetIn, partyOf } from "../../src/intake/party.ts";
import type { SenderProof } from "../../src/trade/sender-proof.ts";
import { temporaryDesk } from "../make/desk.ts";

let desk: Desk;

beforeEach(async () => {
  const made = await temporaryDesk();
  desk = {
    ...made,
    rules: {
      ...made.rules,
      sharedDomains: ["freemail.example"],
      known: ["kim@lowell.example", "oakmoor.example"],
    },
    store: {
      ...made.store,
      buyers: {
        ...made.store.buyers,
        ownerOf: (number) =>
          Promise.resolve(
            {
              "BW-2207": { buyer: "ines@brightwire.example", domain: "brightwire.example" },
              "BW-2208": { buyer: "omar@brightwire.example", domain: "brightwire.example" },
              "BW-2209": { buyer: "ines@brightwire.example", domain: "brightwire.example" },
              "FM-1": { buyer: "jo@freemail.example" },
              "OLD-1": { buyer: "ines@brightwire.example" },
            }[number],
          ),
        knows: (sender) => Promise.resolve(sender.startsWith("ines@")),
        proved: (sender) => Promise.resolve(sender === "ines@brightwire.example"),
      },
    },
  };
});

const party = (from: string | undefined, proof: SenderProof | "not asked", ...numbers: string[]) =>
  partyOf({ from, proof, numbers }, desk);

describe("the order's own buyer", () => {
  test("may go on with it", async () => {
    expect(await party("ines@brightwire.example", "pass", "BW-2207")).toEqual({
      buyer: "ines@brightwire.example",
      domain: "brightwire.example",
      mayAnswer: true,
    });
  });

  test("has a colleague of the same proved domain, who may too", async () => {
    expect(await party("omar@brightwire.example", "pass", "BW-2207")).toMatchObject({
      buyer: "ines@brightwire.example",
      mayAnswer: true,
    });
  });
});

describe("a colleague's letter that names several numbers", () => {
  const omar = "ada@brightwire.example";
  test("may, where all are one colleague's or nobody's", async () => {
    expect(await party(omar, "pass", "BW-2207", "BW-2209", "BW-1")).toEqual({
      buyer: "ines@brightwire.example",
      domain: "brightwire.example",
      mayAnswer: true,
    });
  });

  test("is for a person, where they are of two", async () => {
    for (const [from, numbers] of [
      [omar, ["BW-2207", "BW-2208"]],
      [omar, ["BW-2208", "BW-2207"]],
      ["ines@brightwire.example", ["BW-2207", "BW-2208"]],
      [omar, ["BW-2207", "OLD-1"]],
      [omar, ["OLD-1", "BW-2207"]],
    ] as const)
      expect(await party(from, "pass", ...numbers)).toEqual({
        buyer: from,
        domain: "brightwire.example",
        mayAnswer: true,
        why: "it names an order number of another buyer",
      });
  });
});

test("a number of nobody's is whoever's names it, and a shared domain gives no rights", async () => {
  expect(await party("jo@freemail.example", "pass", "FM-1", "FM-2")).toEqual({
    buyer: "jo@freemail.example",
    mayAnswer: true,
  });
  expect(await party("ines@brightwire.example", "not asked", "BW-2207")).toEqual({
    buyer: "ines@brightwire.example",
    mayAnswer: true,
  });
});

test("a sender of whom nobody could find out is not answered, known or not", async () => {
  for (const from of ["ines@brightwire.example", "eve@stranger.example"])
    expect(await party(from, "temporary", "BW-2207")).toMatchObject({
      mayAnswer: false,
      why: "it could not be found out who sent it",
    });
});

describe("a stranger who knows the number", () => {
  test.each([
    ["from elsewhere", "eve@stranger.example", "pass", "BW-2207"],
    ["from a look-alike domain", "ines@brightvvire.example", "pass", "BW-2207"],
    ["from a domain below the buyer's", "ines@mail.brightwire.example", "pass", "BW-2207"],
    ["from a domain that many share", "eve@freemail.example", "pass", "FM-1"],
    ["of the buyer's domain, unproved", "omar@brightwire.example", "not asked", "BW-2207"],
    [
      "of the buyer's domain, where the order's letters were not proved",
      "omar@brightwire.example",
      "pass",
      "OLD-1",
    ],
  ] as const)("%s is kept apart, and a person looks", async (_, from, proof, number) => {
    const { buyer, mayAnswer, why } = await party(from, proof, number);
    // The answer to a held letter says nothing of any order.
    expect({ buyer, mayAnswer }).toEqual({ buyer: from, mayAnswer: true });
    expect(why).toContain("another buyer");
  });
});

describe("no answer goes", () => {
  test("to a forged address, even the buyer's own", async () => {
    expect(await party("ines@brightwire.example", "fail", "BW-2207")).toMatchObject({ mayAnswer: false });
  });

  test("to a new sender whom nothing proves", async () => {
    expect(await party("eve@stranger.example", "none")).toMatchObject({ mayAnswer: false });
  });

  test("without a sender", async () => {
    expect(await party(undefined, "not asked")).toMatchObject({ buyer: "", mayAnswer: false });
  });
});

describe("where nothing proves or disproves the letter", () => {
  test("a known sender of whom nothing was ever proved is answered", async () => {
    expect(await party("ines@unproved.example", "none")).toMatchObject({ mayAnswer: true });
  });

  test("a sender who was proved before is not", async () => {
    expect(await party("ines@brightwire.example", "none", "BW-2207")).toMatchObject({
      mayAnswer: false,
      why: "nothing proves who sent it, and other letters of the sender are proved",
    });
  });

  test("whom the settings name is, by address or by domain, and without a domain's rights", async () => {
    expect(await party("kim@lowell.example", "none")).toEqual({
      buyer: "kim@lowell.example",
      mayAnswer: true,
    });
    expect(await party("lee@oakmoor.example", "none")).toMatchObject({ mayAnswer: true });
    expect(await party("eve@lowell.example", "none")).toMatchObject({ mayAnswer: false });
    expect(await party("kim@lowell.example", "fail")).toMatchObject({ mayAnswer: false });
  });
});

describe("a letter that our own staff forwarded", () => {
  const forwarded = (buyer: string, ...numbers: string[]) =>
    partyOf(
      { from: "sam@quillgate.example", proof: "pass", numbers, forwarded: { kind: "of", buyer } },
      desk,
    );

  test("goes to its original sender's orders, and vouches for no domain", async () => {
    expect(await forwarded("ines@brightwire.example", "BW-2207")).toEqual({
      buyer: "ines@brightwire.example",
      mayAnswer: true,
    });
    expect(await forwarded("omar@brightwire.example", "BW-2207")).toMatchObject({
      mayAnswer: true,
      why: expect.stringContaining("another buyer"),
    });
  });

  test("may name numbers of nobody's too, and none of another's beside its own", async () => {
    expect(await forwarded("ines@brightwire.example", "BW-1", "BW-2207")).not.toHaveProperty("why");
    expect(await forwarded("ines@brightwire.example", "BW-2207", "BW-2208")).toHaveProperty("why");
    expect(await forwarded("ines@brightwire.example")).not.toHaveProperty("why");
  });

  test("is for a person where it is not clear whose it was", async () => {
    const unclear = { kind: "unclear", why: "nobody knows" } as const;
    const from = "sam@quillgate.example";
    expect(await partyOf({ from, proof: "pass", numbers: [], forwarded: unclear }, desk)).toMatchObject({
      mayAnswer: false,
      why: "nobody knows",
    });
  });
});

test("a letter to the orders of two buyers is for a person", async () => {
  expect(await party("ines@brightwire.example", "pass", "BW-2207", "FM-1")).toMatchObject({
    buyer: "ines@brightwire.example",
    mayAnswer: true,
    why: expect.any(String),
  });
});

describe("words that name an order's number", () => {
  const named = (from: string, proof: SenderProof, ...numbers: string[]) =>
    colleagueNamed({ from, proof, numbers }, desk);

  test("reach a colleague's order, if the writer's domain is proved", async () => {
    expect(await named("ada@brightwire.example", "pass", "BW-2207", "7 in red")).toMatchObject({
      buyer: "ines@brightwire.example",
      mayAnswer: true,
    });
  });

  test.each([
    ["of the writer's own", "ines@brightwire.example", "pass", "BW-2207"],
    ["of nobody", "ada@brightwire.example", "pass", "7 in red"],
    ["from a writer whom nothing proves", "ada@brightwire.example", "none", "BW-2207"],
    ["from a stranger", "eve@stranger.example", "pass", "BW-2207"],
    ["of an order that was never proved", "ada@brightwire.example", "pass", "OLD-1"],
  ] as const)("%s reach no order of a colleague", async (_, from, proof, ...numbers) => {
    expect(await named(from, proof, ...numbers)).toBeUndefined();
  });
});

test.each<[string, string[], object]>([
  ["no order", ["7 in red"], { buyer: "sam@x.example", mayAnswer: true }],
  ["two orders of one buyer", ["BW-2207", "BW-2209"], { buyer: "ines@brightwire.example", mayAnswer: true }],
  [
    "orders of two",
    ["BW-2207", "FM-1"],
    { buyer: "sam@x.example", mayAnswer: true, why: "it names order numbers of several buyers" },
  ],
])("a letter that somebody has let in and that names %s", async (_, numbers, expected) => {
  expect(await partyLetIn("sam@x.example", numbers, desk)).toEqual(expected);
});
