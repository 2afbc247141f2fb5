import { buttonsOf, type Catalogue, finishOf, layoutOf } from "../catalogue/catalogue.ts";
import { countsIn } from "../reading/reply/counts.ts";
import { numberFrom, numerals } from "../reading/reply/tallies.ts";
import type { Count } from "../trade/count.ts";
import type { Sheet } from "../trade/sheet.ts";

/** What people write where they want several of the one thing that a sheet orders. */
const several = /\b(?:qty|quantity|ea|each|pcs|pieces|x|no)\b|\d ?[x×]|×/i;
const total = /\b(?:totals?|altogether|in all|sum|orders?)\b/i;

/** How many sheets its order has, if a sheet's notes say just that. "QTY 4" may ask for four of what is on the sheet. */
export function notedCounts(sheet: Sheet, catalogue: Catalogue): readonly Count[] {
  const { notes = "", kind, order = "", project = "" } = sheet;
  const counts = stationsIn(notes) ?? countsIn(notes, [order, project], catalogue) ?? [];
  const [only, ...more] = counts;
  const mayAsk = only?.of === kind && more.length === 0 && several.test(notes) && !total.test(notes);
  // No note says how many files a letter has.
  return mayAsk || counts.some(({ of }) => of === "file") ? [] : counts;
}

/** "3 stations", "Total: 3 stations", "3 stations in total". */
function stationsIn(notes: string): Count[] | undefined {
  const words = new RegExp(
    String.raw`^(?:(?:total|order of)\b:? ?)?(\d{1,2}|${numerals.slice(1).join("|")}) stations?(?: (?:in (?:total|all)|total|altogether))?\.?$`,
    "i",
  );
  const [, number] = words.exec(notes.replace(/\s+/g, " ").trim()) ?? [];
  return number === undefined ? undefined : [{ of: "station", number: numberFrom(number) }];
}

/** A count in words: "14 devices of 4 buttons", "5 plates of 4 gangs in Oat". */
export function countInWords({ of, number, layout, gangs, finish }: Count, catalogue: Catalogue): string {
  const made = layout === undefined ? undefined : layoutOf(catalogue, layout);
  const parts = [
    counted(number, of),
    ...(made === undefined ? [] : [`of ${counted(buttonsOf(made), "button")}`]),
    ...(gangs === undefined ? [] : [`of ${counted(gangs, "gang")}`]),
    ...(finish === undefined ? [] : [`in ${finishOf(catalogue, finish)?.name ?? finish}`]),
  ];
  return parts.join(" ");
}

function counted(n: number, noun: string): string {
  return `${n} ${noun}${n === 1 ? "" : "s"}`;
}
