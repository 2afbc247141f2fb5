import type { Count } from "../trade/count.ts";
import type { Order } from "../trade/order.ts";
import type { Sheet } from "../trade/sheet.ts";
import { plainText } from "./keys.ts";

/** How many sheets are what a count counts. A sheet that does not say it may be one. */
export interface Tally {
  readonly least: number;
  readonly most: number;
}

/** `perhaps`: as many more files may be sheets. */
export function tallyOf(count: Count, sheets: readonly Sheet[], perhaps = 0): Tally {
  if (count.of === "station") return stationsOf(sheets, perhaps);
  const fits = sheets.map((sheet) => fit(sheet, count));
  return {
    least: fits.filter((one) => one === "yes").length,
    most: fits.filter((one) => one !== "no").length + perhaps,
  };
}

/** A sheet without a mark may be of a station that no other sheet names. */
function stationsOf(sheets: readonly Sheet[], perhaps: number): Tally {
  const marks = sheets.map(({ mark = "" }) => plainText(mark));
  const least = new Set(marks.filter((mark) => mark !== "")).size;
  return { least, most: least + marks.filter((mark) => mark === "").length + perhaps };
}

/** The sheets of an order that a count may mean. Nobody knows yet whether those kept aside count. */
export function tallyIn(count: Count, { sheets, aside }: Pick<Order, "sheets" | "aside">): Tally {
  return tallyOf(
    count,
    sheets,
    tallyOf(
      count,
      aside.map(({ sheet }) => sheet),
    ).most,
  );
}

/** Whether a count is right. By "sheets" people also mean the device sheets alone, or the plate sheets. */
export function isRight(count: Count, { least, most }: Tally, sheets: readonly Sheet[]): boolean {
  const { of, number } = count;
  const isWithin = least <= number && number <= most;
  if (isWithin || of === "device" || of === "plate" || of === "station") return isWithin;
  return (["device", "plate"] as const).some(
    (kind) => sheets.filter((sheet) => sheet.kind === kind).length === number,
  );
}

type Fit = "yes" | "no" | "perhaps";

function fit(sheet: Sheet, { of, layout, finish, gangs }: Count): Fit {
  if (of === "sheet" || of === "file") return "yes";
  if (sheet.kind !== of) return "no";
  const layouts = sheet.kind === "device" && sheet.layouts.length === 1 ? sheet.layouts[0] : undefined;
  const fits = [same(finish, sheet.finish), same(layout, layouts), same(gangs, sheet.gangs)];
  return fits.includes("no") ? "no" : fits.includes("perhaps") ? "perhaps" : "yes";
}

function same<T>(wanted: T | undefined, has: T | undefined): Fit {
  if (wanted === undefined) return "yes";
  return has === undefined ? "perhaps" : has === wanted ? "yes" : "no";
}
