import type { Catalogue } from "../catalogue/catalogue.ts";
import { checkFile, checkLetter } from "../checks/run.ts";
import { sheetFromList } from "../checks/sheet/sheet-from-list.ts";
import { alikeOrders } from "../orders/alike-order.ts";
import type { Expected } from "../orders/expected.ts";
import { managerOf, managerOfSheets } from "../orders/managed.ts";
import { stillMissing } from "../orders/still-missing.ts";
import { asksForSheets } from "../reading/reply/asks-for-sheets.ts";
import type { ReadFile } from "../trade/attachment.ts";
import type { Carried } from "../trade/carried.ts";
import { countedBy } from "../trade/count.ts";
import type { Managing } from "../trade/manager.ts";
import { memory } from "../trade/memory.ts";
import type { Note } from "../trade/note.ts";
import type { Missing, Order, Replacement, Untouched } from "../trade/order.ts";
import { gravest, type Problem, type Verdict, verdictOf } from "../trade/problem.ts";
import type { Released } from "../trade/released.ts";
import type { FileId, Sheet } from "../trade/sheet.ts";
import { type AskedQuestion, questioning } from "./answered.ts";
import { decidedIn, type IsSettled, settledBy } from "./carried.ts";
import { type Changed, changedIn } from "./changed.ts";
import { countedIn } from "./counts.ts";
import { isMendedElsewhere } from "./mended-elsewhere.ts";
import { orderReport } from "./order-report.ts";
import { promisedOf } from "./promised.ts";
import { type SheetReport, sheetReport } from "./sheet-report.ts";
import { membersOf, sheetsOf } from "./sheets-of.ts";
import { standingWith } from "./standing-with.ts";
import { type BuyerState, newBuyer, orderKey } from "./state.ts";
import type { Submission } from "./submission.ts";
import { crossedIn, isTouched, partOf, puttingIn, stateOf } from "./touched.ts";

export interface OrderReport {
  readonly order: Order;
  readonly verdict: Verdict;
  readonly missing: readonly Missing[];
  /** The missing sheets with what is known of them, and those that would be missing if an unordered plate came. */
  readonly expected: readonly Expected[];
  readonly problems: readonly Problem[];
  /** What letters left open and this one does not settle. */
  readonly carried: readonly Carried[];
  /** The questions among its problems and those of its sheets. */
  readonly asked: readonly AskedQuestion[];
  /** The largest number that one of its questions ever had. */
  readonly lastNumber: number;
  /** What has become of it, where we have answered for it before. */
  readonly changed?: Changed;
  /** What of it was handed to engraving last. */
  readonly released?: Released;
  /** Who manages it. */
  readonly managing?: Managing;
}

export interface FileReport {
  readonly file: ReadFile;
  readonly problems: readonly Problem[];
}

export interface Withdrawn {
  readonly order: string;
  readonly sheets: readonly Sheet[];
  /** Whether a sheet of the order still stands. */
  readonly leaves: "some" | "nothing";
  /** Who managed an order of which nothing is left. */
  readonly managing?: Managing;
}

/** Sheets that one of our own people has put elsewhere. */
export interface Moved {
  readonly note: Note;
  readonly sheets: readonly (SheetReport & { readonly old: Sheet })[];
}

/** All that there is to say about a submission; text, HTML and JSON are renderings of it. */
export interface Report {
  readonly verdict: Verdict;
  readonly files: readonly FileReport[];
  /** The sheets that came with this submission. */
  readonly sheets: readonly SheetReport[];
  /** The orders that this submission changes or is about, with the earlier sheets of each. */
  readonly orders: readonly OrderReport[];
  /** Problems of the submission as a whole. */
  readonly problems: readonly Problem[];
  /** Sheets of earlier letters that still stand. */
  readonly earlier: readonly Sheet[];
  /** Earlier sheets whose place sheets of this submission take. */
  readonly replaced: readonly Replacement[];
  /** Sheets of this submission that came too late: an earlier letter brought a newer sheet for their place. */
  readonly late: readonly Replacement[];
  /** Sheets of this submission that came as they were sent out, each beside one for its place. */
  readonly untouched: readonly Untouched[];
  /** Earlier sheets that this submission withdraws, by the number of their order. */
  readonly withdrawn: readonly Withdrawn[];
  /** What was put elsewhere. The sheets as they stood are among the withdrawn ones. */
  readonly moved?: Moved;
  /** Its sender asks for sheets to fill in. */
  readonly asksForSheets?: boolean;
  /** A person must see the submission first. Its sender is told nothing of it before. */
  readonly held: boolean;
  /** The number of the letter, where it is one. */
  readonly letter?: string;
}

/** Judges everything that came in together, beside all that its buyer has sent before. Pure. */
export function makeReport(
  submission: Submission,
  catalogue: Catalogue,
  state: BuyerState = newBuyer(),
): Report {
  const { files, held = false, reply = false, links = [], unsafe = false } = submission;
  const { kept = [], statements = [], answers = { yes: [], no: [] }, dealtWith = [] } = submission;
  const {
    withdraws = [],
    moves = [],
    answersLate = [],
    answersDenied = [],
    note,
    decidedBy,
    managing = [],
  } = submission;
  const reportOn = memory((sheet: Sheet) => sheetReport(sheet, catalogue));
  const { before, taken, known, sheets, standing, all } = standingWith(
    submission,
    state,
    reportOn,
    catalogue,
  );
  const came = new Set(sheets.map(({ id }) => id));
  const hasCome = settledBy(
    standing.sheets.filter(({ id }) => came.has(id)),
    standing,
    state.orders,
  );
  const isSettled: IsSettled = (one) => dealtWith.includes(one.letter) || hasCome(one);
  // Where the two orders seem to be one, the other one is asked about it.
  const isElsewhere = memory(
    (order: Order) =>
      isMendedElsewhere(order, submission, { sheets, replaced: standing.replaced }) &&
      !all.some(
        (other) =>
          other.sheets.some(({ id }) => came.has(id)) &&
          alikeOrders(
            other,
            all.filter((one) => one !== other),
          ).some((one) => one.asked && one.other === order),
      ),
  );
  const touched = all.filter(
    (order) =>
      isTouched(order, submission, standing, state) ||
      isElsewhere(order) ||
      stateOf(order, state)?.carried.some(isSettled) === true,
  );
  const byId = new Map([...before, ...sheets].map((sheet) => [sheet.id, sheet]));
  const { open, forPerson, anew } = countedIn(statements, {
    letter: submission.letter?.number ?? "",
    sheets,
    files,
    orders: touched,
    catalogue,
  });
  const stays = (one: Carried): boolean =>
    one.what === "count"
      ? !anew.has(countedBy(one.count)) && !dealtWith.includes(one.letter)
      : !isSettled(one);
  const questions = memory((order: Order) => questioning(order.number, state, submission, byId));
  const isFaulty = memory((order: Order) =>
    membersOf(order).some((sheet) =>
      reportOn(sheet).problems.some(
        (problem) => problem.verdict === "fail" && !questions(order).isAnswered(problem),
      ),
    ),
  );
  const withoutAnswered = (report: SheetReport, order: Order | undefined): SheetReport => {
    if (order === undefined) return report;
    const problems = report.problems.filter(
      (problem) =>
        !questions(order).isAnswered(problem) &&
        // Nobody is asked to look at all that a list orders before it is right.
        !(problem.check === sheetFromList.id && isFaulty(order)),
    );
    return problems.length === report.problems.length
      ? report
      : { ...report, problems, verdict: verdictOf(problems) };
  };
  const { settles = [], decides = [] } = submission;
  const wasPut = puttingIn(submission, state);
  const isToOpen = files.some((file) =>
    checkFile(file, catalogue).some(({ verdict }) => verdict === "person"),
  );
  const orders = touched.map((order) => {
    const before = stateOf(order, state);
    const isDecided = before === undefined ? () => false : decidedIn(before, [...decides, ...settles]);
    const left = (before?.carried ?? []).filter(
      (one) => one.what !== "promise" && stays(one) && !isDecided(one),
    );
    const promised = promisedOf(order, (before?.carried ?? []).filter(stays), {
      letter: submission.letter?.number ?? "",
      announced: submission.announced,
      claims: submission.claims ?? [],
      sheets,
      names: files.filter(({ kind }) => kind !== "decoration").map(({ named, file }) => named ?? file),
      ids: came,
      isElsewhere: isElsewhere(order),
      ...partOf(standing, order),
    });
    const judged = orderReport(order, {
      others: without(all, order),
      members: membersOf(order).map((sheet) => withoutAnswered(reportOn(sheet), order)),
      came,
      part: partOf(standing, order),
      crossed: crossedIn(order, before, known.arrivals, wasPut),
      carried: [...left, ...open, ...promised],
      questions: questions(order),
      released: before?.released,
      managing: managerOf({ ...order, buyer: state.buyer }, managing),
      // Words and files may be about any order of their letter, so none passes before a person has seen them.
      waitsForPerson: held || forPerson.length > 0 || isToOpen,
      catalogue,
    });
    const { replaced } = partOf(standing, order);
    const now = { before, came, replaced, settles, decides, note, decidedBy };
    const changed = changedIn(judged, now);
    return { ...judged, ...(changed === undefined ? {} : { changed }) };
  });
  const orderOf = new Map(touched.flatMap((order) => sheetsOf(order).map(({ id }) => [id, order] as const)));
  const gone = new Set(standing.replaced.map(({ old }) => old.id));
  const isMended = (number: number): boolean =>
    touched
      .flatMap((order) => stateOf(order, state)?.questions ?? [])
      .some((one) => one.number === number && one.problem.spots.every(({ file }) => gone.has(file)));
  // A device may stand alone, and then nothing else tells of a sheet that arrived blank. A plate has its devices.
  const needsNoPlate =
    files.some(({ blank }) => blank === "plate") &&
    sheets.length > 0 &&
    orders.every(isRight) &&
    all.every((order) => stillMissing(order, without(all, order)).length === 0);
  const report = {
    files: files.map((one) => {
      const file = needsNoPlate && one.blank === "plate" ? { ...one, spare: true as const } : one;
      return { file, problems: checkFile(file, catalogue) };
    }),
    sheets: sheets.map((sheet) =>
      withoutProblemsOf(standing, withoutAnswered(reportOn(sheet), orderOf.get(sheet.id))),
    ),
    orders,
    // A note of one of our own people is no letter.
    problems:
      note !== undefined
        ? []
        : checkLetter(
            {
              files,
              orders: touched,
              held,
              reply,
              withdraws: withdraws.length > 0,
              kept,
              answers: { ...answers, mended: answers.no.filter(isMended) },
              answersLate,
              answersDenied,
              links,
              statements: forPerson,
              unsafe,
            },
            catalogue,
          ),
    earlier: before.filter((sheet) => standing.sheets.includes(sheet)),
    replaced: standing.replaced,
    late: standing.late,
    untouched: standing.untouched,
    withdrawn: withdrawnFrom(state, taken, all, managing),
    ...(note === undefined || moves.length === 0
      ? {}
      : { moved: { note, sheets: moves.map(({ old, now }) => ({ ...reportOn(now), old })) } }),
    asksForSheets: statements.some((one) => one.kind === "said" && asksForSheets(one.words)),
    held,
    ...(submission.letter === undefined ? {} : { letter: submission.letter.number }),
  };
  return {
    ...report,
    verdict: gravest([...orders.map(({ verdict }) => verdict), verdictOf(everyProblem(report))]),
  };
}

/** Whether nothing stops an order. Questions may be open. */
function isRight({ order, verdict }: OrderReport): boolean {
  return order.aside.length === 0 && (verdict === "pass" || verdict === "confirm");
}

function without(orders: readonly Order[], one: Order): Order[] {
  return orders.filter((other) => other !== one);
}

/** Every problem of a report, from the files to the letter as a whole. */
export function everyProblem(report: Omit<Report, "verdict">): Problem[] {
  return [
    ...report.files.flatMap(({ problems }) => problems),
    ...report.sheets.flatMap(({ problems }) => problems),
    ...report.orders.flatMap(({ problems }) => problems),
    ...report.problems,
  ];
}

function withdrawnFrom(
  { orders, buyer }: BuyerState,
  taken: ReadonlySet<FileId>,
  standing: readonly Order[],
  all: readonly Managing[],
): Withdrawn[] {
  const left = new Set(standing.map(({ number }) => orderKey(number)));
  return orders.flatMap(({ number, sheets }): Withdrawn[] => {
    const gone = sheets.filter(({ id }) => taken.has(id));
    if (gone.length === 0) return [];
    if (left.has(orderKey(number))) return [{ order: number, sheets: gone, leaves: "some" }];
    const managing = managerOfSheets(buyer, sheets, all);
    return [
      { order: number, sheets: gone, leaves: "nothing", ...(managing === undefined ? {} : { managing }) },
    ];
  });
}

/** The report on a sheet; one that came too late or untouched has no problems, since it need not be mended. */
function withoutProblemsOf(
  { late, untouched }: Pick<Report, "late" | "untouched">,
  report: SheetReport,
): SheetReport {
  const gone = [...late.map(({ old }) => old), ...untouched.map(({ blank }) => blank)];
  return gone.some(({ id }) => id === report.sheet.id)
    ? { ...report, problems: [], verdict: "pass" }
    : report;
}
