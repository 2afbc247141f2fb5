import type { Catalogue } from "../catalogue/catalogue.ts";
import { gatherOrders } from "../orders/gather.ts";
import { type Known, type Standing, standingAfter } from "../orders/stand.ts";
import type { Order } from "../trade/order.ts";
import type { FileId, Sheet } from "../trade/sheet.ts";
import { withHeaders, withOrderNumber } from "./headers.ts";
import type { SheetReport } from "./sheet-report.ts";
import { type BuyerState, orderKey } from "./state.ts";
import type { Submission } from "./submission.ts";
import { knownOf } from "./told-before.ts";

/** Which sheets of a buyer stand once a submission has come. */
interface StandingWith {
  /** The earlier sheets that the submission leaves, those put elsewhere where they are now. */
  readonly before: readonly Sheet[];
  /** The earlier sheets that it takes away. */
  readonly taken: ReadonlySet<FileId>;
  readonly known: Known;
  /** Its own sheets. What their order says alike they have from each other. */
  readonly sheets: readonly Sheet[];
  readonly standing: Standing;
  /** All orders of the buyer. */
  readonly all: readonly Order[];
}

/** Puts the sheets of a submission beside those that its buyer has sent before. */
export function standingWith(
  submission: Submission,
  state: BuyerState,
  reportOn: (sheet: Sheet) => SheetReport,
  catalogue: Catalogue,
): StandingWith {
  const { withdraws = [], moves = [] } = submission;
  const elsewhere = new Map(moves.map(({ old, now }) => [old.id, now]));
  const taken = new Set([...withdraws, ...elsewhere.keys()]);
  const before = onceEach(state.orders.flatMap((order) => order.sheets)).flatMap((sheet) =>
    taken.has(sheet.id) ? (elsewhere.get(sheet.id) ?? []) : sheet,
  );
  const known = knownOf(
    before,
    arrivalsWith(submission, state),
    (sheet) => reportOn(sheet).problems,
    catalogue,
    new Map(
      state.orders.flatMap(({ number, sheets: had }) =>
        had.map(({ id }) => [elsewhere.get(id)?.id ?? id, orderKey(number)] as const),
      ),
    ),
  );
  const ordersWith = (some: readonly Sheet[]) => () =>
    gatherOrders(standingAfter(before, some, known).sheets, known);
  const numbered = withOrderNumber(submission.sheets, ordersWith(submission.sheets));
  const sheets = withHeaders(numbered, ordersWith(numbered), (sheet) => reportOn(sheet).problems);
  const standing = standingAfter(before, sheets, known);
  const all = gatherOrders(standing.sheets, known);
  return { before, taken, known, sheets, standing, all };
}

function onceEach(sheets: readonly Sheet[]): Sheet[] {
  return [...new Map(sheets.map((sheet) => [sheet.id, sheet])).values()];
}

function arrivalsWith({ letter }: Submission, { arrivals }: BuyerState): BuyerState["arrivals"] {
  return letter === undefined ? arrivals : new Map([...arrivals, [letter.number, letter.came]]);
}
