import type { Catalogue } from "../catalogue/catalogue.ts";
import { cutOf } from "../checks/fitted.ts";
import { checkSheet } from "../checks/run.ts";
import type { CutLegend } from "../trade/cut.ts";
import { type Problem, type Verdict, verdictOf } from "../trade/problem.ts";
import { remember } from "../trade/remember.ts";
import type { Sheet } from "../trade/sheet.ts";

export interface SheetReport {
  readonly sheet: Sheet;
  readonly verdict: Verdict;
  readonly problems: readonly Problem[];
  /** Its legends as they would be cut. */
  readonly cut: readonly CutLegend[];
}

type Said = Omit<SheetReport, "sheet">;

/** So many sheets are remembered. A buyer may have three hundred that still stand. */
const most = 2000;

/** What there is to say of sheets, by the sheet as text. A buyer's earlier sheets are judged beside each new letter. */
const remembered = new WeakMap<Catalogue, Map<string, Said>>();

/** What there is to say of one sheet, looked at alone. */
export function sheetReport(sheet: Sheet, catalogue: Catalogue): SheetReport {
  const said = remembered.get(catalogue) ?? new Map<string, Said>();
  remembered.set(catalogue, said);
  return { sheet, ...remember(said, JSON.stringify(sheet), most, () => sayOf(sheet, catalogue)) };
}

function sayOf(sheet: Sheet, catalogue: Catalogue): Said {
  const problems = checkSheet(sheet, catalogue);
  return { verdict: verdictOf(problems), problems, cut: cutOf(sheet, catalogue) };
}
