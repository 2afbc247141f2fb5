import { describe, expect, test } from "vitest";
import { blankSheet } from "../../src/drawing/blank-sheet.ts";
import { plainSheet } from "../../src/drawing/plain-sheet.ts";
import { type Edition, readEdition } from "../../src/reading/edition.ts";
import { guessForm } from "../../src/reading/own-form/guess.ts";
import { readOutline } from "../../src/reading/own-form/read-outline.ts";
import { skeletonOf } from "../../src/reading/own-form/skeleton.ts";
import { maker, must, trade } from "../make/config.ts";
import { laidOut, type Piece } from "../make/laid-out.ts";
import { bared, shareOf } from "../make/own-forms.ts";

const shops = Object.entries({ trade, maker });
const all = shops.flatMap(([shop, { catalogue, editions }]) =>
  editions.map((edition) => ({ shop, catalogue, edition })),
);

/** What is left of a form to tell its fields by, and how many of all fields must be told right. */
const less = [
  { has: "tips, labels and names", tips: true, names: true, least: 1 },
  { has: "labels and names", tips: false, names: true, least: 0.98 },
  { has: "labels alone", tips: false, names: false, least: 0.9 },
] as const;

describe.each(less)("by $has", ({ tips, names: named, least }) => {
  test("the fields of our own blank sheets are guessed to mean what their editions say", async () => {
    const shares = await Promise.all(
      all.map(async ({ catalogue, edition }) => {
        const drawn = edition.drawn ? blankSheet(edition, catalogue) : plainSheet(edition, catalogue);
        const { bytes, names } = await bared(await drawn, { tips, names: named });
        return { edition, share: await shareOf(bytes, { edition, names, makes: catalogue }) };
      }),
    );
    // What nothing tells is left to a person, but nothing is guessed amiss.
    expect(shares.flatMap(({ share }) => share.wrong)).toEqual([]);
    expect(shares.map(({ share }) => share.form)).toEqual(all.map(({ edition }) => edition.form));
    const [right, count] = shares.reduce(([a, b], { share }) => [a + share.right, b + share.all], [0, 0]);
    expect(right / count).toBeGreaterThanOrEqual(least);
  });
});

const addressParts = ["Company", "Street address", "City", "State", "ZIP"];
const partPlaces = ["name", "street", "city", "state", "postcode"];

/** A field with its label: above it, or to its left. */
function labelled(
  side: "above" | "left",
  say: string,
  field: string,
  x: number,
  y: number,
  more: object = {},
): Piece[] {
  return side === "above"
    ? [
        { say, x, y: y - 16 },
        { field, x, y, ...more },
      ]
    : [
        { say, x, y },
        { field, x: x + 110, y, ...more },
      ];
}

/** A form of nobody's, its labels on one side or the other, its fields named by a program. */
function foreign(side: "above" | "left"): {
  readonly pieces: Piece[];
  readonly means: Record<string, string>;
} {
  const means: Record<string, string> = {};
  const pieces: Piece[] = [{ say: "Wall control order", x: 40, y: 40, size: 16 }];
  const put = (place: string, say: string, x: number, y: number, more: object = {}): void => {
    const field = `Text${Object.keys(means).length + 1}`;
    means[field] = place;
    pieces.push(...labelled(side, say, field, x, y, more));
  };
  put("project", "Job name", 40, 90);
  put("order", "P.O. number", 320, 90);
  put("contact.name", "Your name", 40, 125);
  put("contact.email", "Email address", 320, 125);
  put("contact.phone", "Telephone", 40, 160);
  put("mark", "Room / station tag", 320, 160);
  pieces.push({ say: "BILLING", x: 40, y: 195, size: 11 }, { say: "SHIPPING", x: 320, y: 195, size: 11 });
  for (const [i, part] of addressParts.entries()) {
    put(`bill.${partPlaces[i]}`, part, 40, 230 + 32 * i);
    put(`ship.${partPlaces[i]}`, part, 320, 230 + 32 * i);
  }
  put("finish", "Colour of the body", 40, 400, { list: ["White", "Black"] });
  put("lettering", "Colour of the text", 320, 400, { list: ["White", "Black"] });
  put("position", "Position in plate", 40, 435);
  put("gangs", "Number of gangs", 320, 435);
  put("notes", "Special instructions", 40, 740);
  return { pieces, means };
}

describe.each(["above", "left"] as const)("with labels %s, and names that say nothing", (side) => {
  test("a form of nobody's is guessed right", async () => {
    const { pieces, means } = foreign(side);
    const ticks: Piece[] = [
      { field: "Check1", x: 40, y: 465, box: true },
      { say: "Same as billing address", x: 56, y: 465 },
      { field: "Check2", x: 240, y: 465, box: true },
      { say: "2 buttons", x: 256, y: 465 },
      { field: "Check3", x: 320, y: 465, box: true },
      { say: "4 buttons", x: 336, y: 465 },
      { say: "Line 1", x: 110, y: 490 },
      { say: "Line 2", x: 260, y: 490 },
      { say: "Mounting height", x: 40, y: 640 },
      { field: "Other", x: 150, y: 640 },
    ];
    const grid = [1, 2, 3, 4].flatMap((face): Piece[] => [
      { say: `Button ${face}`, x: 40, y: 490 + 24 * face },
      ...[1, 2].map(
        (row): Piece => ({ field: `Cell${face}${row}`, x: 110 + 150 * (row - 1), y: 490 + 24 * face }),
      ),
    ]);
    const outline = await readOutline(await laidOut([...pieces, ...ticks, ...grid]));
    if (outline.kind !== "form") throw new Error(outline.kind);
    const { form, guesses } = guessForm(outline, trade.catalogue);
    expect(form).toBe("device");
    const told = Object.fromEntries(guesses.map(({ field, place, ticked }) => [field.name, ticked ?? place]));
    expect(told).toEqual({
      ...means,
      Check1: "ship.same",
      Check2: "D2",
      Check3: "D4",
      ...Object.fromEntries(
        [1, 2, 3, 4].flatMap((face) => [1, 2].map((row) => [`Cell${face}${row}`, `row.${face}.${row}`])),
      ),
      Other: undefined,
    });
  });
});

/** The skeleton of a form, and what the reader of editions says of it. */
async function skeleton(
  pieces: readonly Piece[],
): Promise<{ readonly text: string; readonly faults: readonly string[] }> {
  const outline = await readOutline(await laidOut(pieces));
  if (outline.kind !== "form") throw new Error(outline.kind);
  const guessed = guessForm(outline, trade.catalogue);
  const text = skeletonOf({ ...guessed, name: "f", title: "F", blank: "f.pdf", never: [] }, trade.catalogue);
  const read = readEdition(text, "f.yaml", trade.catalogue);
  return { text, faults: read.ok ? [] : read.faults.map(({ path, what }) => `${path}: ${what}`) };
}

test.each(all)(
  "the skeleton of $shop $edition.name loads as far as it is complete",
  async ({ catalogue, edition }) => {
    const drawn = edition.drawn ? blankSheet(edition, catalogue) : plainSheet(edition, catalogue);
    const outline = await readOutline(await drawn);
    if (outline.kind !== "form") throw new Error(outline.kind);
    const drafted = { ...guessForm(outline, catalogue), name: "f", title: "F", blank: "f.pdf", never: [] };
    const text = skeletonOf(drafted, catalogue);
    const read = readEdition(text, "f.yaml", catalogue);
    // What a distributor calls a colour is for a person to say.
    const own = edition.fields.flatMap(({ name, values }) =>
      Object.keys(values).map((value) => `fields.${name}.values.${value}`),
    );
    const faults = read.ok ? [] : read.faults.map(({ path }) => path);
    expect(faults.filter((path) => !own.includes(path))).toEqual([]);
    const filled = text
      .split("\n")
      .map((line) => {
        const values = edition.fields.find(({ name }) => line.startsWith(`  ${name}: {`))?.values ?? {};
        return line.replace(/([\w-]+): "\?"/g, (_, value: string) => `${value}: ${values[value]}`);
      })
      .join("\n");
    const meaning = ({ fields }: Edition): object =>
      Object.fromEntries(fields.map(({ name, place, ticked }) => [name, [place, ticked]]));
    expect(meaning(must(readEdition(filled, "f.yaml", catalogue)))).toEqual(meaning(edition));
  },
);

test("what nothing tells is asked for in a sentence, and so are values that are no choice", async () => {
  const { text, faults } = await skeleton([
    { say: "Project", x: 40, y: 60 },
    { field: "a", x: 120, y: 60 },
    { say: "Mounting height", x: 40, y: 90 },
    { field: "b", x: 140, y: 90 },
    { say: "Finish", x: 40, y: 120 },
    { field: "c", x: 120, y: 120, list: ["CHK", "Teak"] },
    { say: "Job name", x: 40, y: 150 },
    { field: "d", x: 120, y: 150 },
  ]);
  expect(faults).toEqual([
    "fields.b.means: not a place on a sheet; `burin settings --places` lists them",
    expect.stringMatching(/^fields\.c\.values\.Teak: “Finish” cannot be “\?”; there are CHK, /),
    "fields.d.means: not a place on a sheet; `burin settings --places` lists them",
  ]);
  expect(text).toContain("# a guess: its label says “Project”\n  a: { means: project, label: Project }");
  expect(text).toContain("looks like project too, which a fills");
  expect(text).toMatch(/# Mapped to nothing yet: b, d\./);
});

test("names and labels can say nothing that the skeleton would take for its own", async () => {
  const { text, faults } = await skeleton([
    { field: 'x": { means: order } #', x: 120, y: 60, tip: "Project\u2028edition: other" },
    { field: "yes", x: 120, y: 90, tip: "Order number: {face}" },
  ]);
  expect(text.split("\n").filter((line) => line.startsWith("edition:"))).toEqual(["edition: f"]);
  expect(faults.filter((fault) => !fault.startsWith("fields."))).toEqual([]);
});

test("a form with a field that only a number tells is numbered from its upper line", async () => {
  const outline = await readOutline(
    await laidOut([
      { say: "1", x: 40, y: 60 },
      { field: "a", x: 60, y: 60 },
      { field: "b", x: 60, y: 78 },
      { say: "2", x: 240, y: 60 },
      { field: "c", x: 260, y: 60 },
      { field: "d", x: 260, y: 78 },
      { say: "Layout", x: 40, y: 120 },
      { field: "e", x: 120, y: 120, list: ["D1", "D2"] },
    ]),
  );
  if (outline.kind !== "form") throw new Error(outline.kind);
  const { guesses } = guessForm(outline, trade.catalogue);
  expect(guesses.map(({ place }) => place)).toEqual(["row.1.1", "row.1.2", "row.2.1", "row.2.2", "layout"]);
});
