import type { Catalogue } from "../catalogue/catalogue.ts";
import type { ReadFile } from "../trade/attachment.ts";
import type { Carried, Promised } from "../trade/carried.ts";
import type { KeptWord } from "../trade/kept-word.ts";
import type { Manager } from "../trade/manager.ts";
import type { Crossed, Order, Replacement, Untouched } from "../trade/order.ts";
import type { Place } from "../trade/place.ts";
import type { Fact, Problem, Severity, Spot, Verdict } from "../trade/problem.ts";
import type { Released } from "../trade/released.ts";
import type { Sheet } from "../trade/sheet.ts";
import type { ForPerson } from "../trade/statement.ts";
import { CannotShow, type Sample, sampleOf } from "./sample.ts";

/** Where a rule comes from. */
export type Source =
  | { readonly kind: "standard"; readonly name: string }
  | { readonly kind: "common practice" }
  | { readonly kind: "house" };

/**
 * What is wrong and how to mend it, with `{holes}` for facts. `{count:row}` prints "1 row" or "2 rows",
 * `{count:copy/copies}` names its plural. A list of facts is joined with commas and "and", as `{choices|or}`
 * with "or", and as `{changes|each}` with a sentence each; numbers in a row are told as "1 to 6".
 */
export interface Wording {
  readonly says: string;
  readonly fix: string;
  /** What an answer tells in place of `says`, if that is for our own people alone. Its holes stand in `says` too. */
  readonly outside?: string;
  /** Where one wording weighs differently from the rest of its check. */
  readonly severity?: Severity;
  /** What a problem in this wording makes of the letter, where its severity does not say it. */
  readonly verdict?: Verdict;
  /**
   * What it is about cannot be seen in what stands, once its letter is judged. It stays until it is answered or its
   * sheets give way.
   */
  readonly stays?: true;
}
type Wordings = Readonly<Record<string, Wording>>;

type Holes<S extends string> = S extends `${string}{${infer Hole}}${infer Rest}` ? Hole | Holes<Rest> : never;
/** The rendered text, which an example must give where there are facts in it. */
type Rendered<Name extends string, Text extends string> = [Holes<Text>] extends [never]
  ? { readonly [N in Name]?: never }
  : { readonly [N in Name]: string };
type NameOf<Hole> = Hole extends `${infer Name}:${string}`
  ? Name
  : Hole extends `${infer Name}|${"or" | "each"}`
    ? Name
    : Hole;
type Counted<Hole> = Hole extends `${infer Name}:${string}` ? Name : never;
type FactsOf<W extends Wording> = {
  readonly [Name in NameOf<Holes<W["says"] | W["fix"]>> & string]: Name extends Counted<
    Holes<W["says"] | W["fix"]>
  >
    ? number
    : Fact;
};

/** Makes one problem of this check; the facts are those that the wording has holes for, no more and no fewer. */
export type Say<W extends Wordings> = <K extends keyof W & string>(
  wording: K,
  facts: FactsOf<W[K]>,
  spots: readonly Spot[],
) => Problem;

/** An example as a check writes it: made of the sample, where it depends on what the catalogue has. */
interface WrittenExample<Subject> {
  /** In a few words: what this example shows. */
  readonly shows: string;
  readonly given: Subject | ((sample: Sample) => Subject);
}

/** An example of any catalogue. */
interface Example<Subject> {
  readonly shows: string;
  /** Undefined where the catalogue has nothing to show it by. */
  readonly given: (catalogue: Catalogue) => Subject | undefined;
}

/** What fails, and what is said of it: the one problem that is found, told in whole sentences where they hold facts. */
type Failing<Subject, W extends Wordings> = {
  [K in keyof W & string]: WrittenExample<Subject> & { readonly wording: K } & Rendered<
      "says",
      W[K]["says"]
    > &
    Rendered<"fix", W[K]["fix"]>;
}[keyof W & string];

interface Definition<Subject, W extends Wordings> {
  readonly id: string;
  readonly title: string;
  readonly severity: Severity;
  /** What a problem of this check makes of the letter, where its severity does not say it. */
  readonly verdict?: Verdict;
  /** Whether its sender alone may settle what it asks, by saying that it is meant so. Otherwise a person does. */
  readonly sender?: "settles";
  /** One of our own people may let stand what it stops. Otherwise it could not be cut, or not be known what to cut. */
  readonly waivable?: true;
  /** What it finds is seen on a page, and its facts do not say it all. */
  readonly seen?: true;
  readonly source: Source;
  readonly why: string;
  readonly wordings: W;
  readonly passing: readonly WrittenExample<Subject>[];
  readonly failing: readonly Failing<Subject, NoInfer<W>>[];
  readonly find: (subject: Subject, catalogue: Catalogue, say: Say<W>) => Iterable<Problem>;
}

/** A failing example of any catalogue. Its sentences are those of the catalogue in `fixtures/trade/`. */
interface FailingExample<Subject> extends Example<Subject> {
  readonly wording: string;
  readonly says: string | undefined;
  readonly fix: string | undefined;
}

/** One thing that can be wrong: data first, then a pure search for it. */
export interface Check<Subject> extends Omit<Definition<Subject, Wordings>, "find" | "passing" | "failing"> {
  readonly passing: readonly Example<Subject>[];
  readonly failing: readonly FailingExample<Subject>[];
  readonly find: (subject: Subject, catalogue: Catalogue) => Iterable<Problem>;
}

/** An order among the other orders that its buyer has named. */
export interface OrderSubject {
  readonly order: Order;
  readonly others: readonly Order[];
  /** Sheets of it that give way to ones of the letter in hand, and sheets of that letter that came too late. */
  readonly replaced?: readonly Replacement[];
  readonly late?: readonly Replacement[];
  /** Sheets of that letter that came as they were sent out, each beside one for its place. */
  readonly untouched?: readonly Untouched[];
  /** Sheets of it that crossed with the letter that cancels their place, and the number of that letter. */
  readonly crossed?: readonly Crossed[];
  /** What earlier letters left open. */
  readonly carried?: readonly Carried[];
  /** What of it was handed to engraving last. */
  readonly released?: Released;
  /** Sheets that letters tell of and that have not come, as far as it is asked about them. */
  readonly promised?: readonly Promised[];
  /** Whose word it waits for, where nothing else stands in its way. */
  readonly awaits?: Manager;
}

/** What a letter brought, taken together. */
export interface LetterSubject {
  readonly files: readonly ReadFile[];
  readonly orders: readonly Order[];
  /** Something outside the sheets says that a person must look first. */
  readonly held: boolean;
  /** The letter replies to an answer of ours. */
  readonly reply: boolean;
  /**
   * Numbers of the questions that it answers, those of its NO whose sheets came with it, and those of words that ask
   * for nothing.
   */
  readonly answers?: {
    readonly yes: readonly number[];
    readonly no: readonly number[];
    readonly mended?: readonly number[];
    readonly nothing?: readonly number[];
  };
  /** Numbers of the questions that it answers although their sheets are withdrawn. */
  readonly answersLate?: readonly number[];
  /** Numbers of the questions that it answers with YES although somebody else, or a newer letter, has said NO. */
  readonly answersDenied?: readonly number[];
  /** It withdraws sheets of earlier letters. */
  readonly withdraws?: boolean;
  /** Words that it keeps as they stand, of those that we asked about. */
  readonly kept?: readonly KeptWord[];
  /** Addresses in its text behind which files seem to lie. */
  readonly links: readonly string[];
  /** What it says beside its sheets that a person has to read. */
  readonly statements?: readonly ForPerson[];
  /** Nothing but its header was read: opening it does harm. */
  readonly unsafe?: boolean;
}

export type FileCheck = Check<ReadFile>;
export type SheetCheck = Check<Sheet>;
export type OrderCheck = Check<OrderSubject>;
export type LetterCheck = Check<LetterSubject>;

const verdictBySeverity = { stops: "fail", asks: "confirm", notes: "pass" } as const satisfies Record<
  Severity,
  Verdict
>;

function define<Subject, const W extends Wordings>(definition: Definition<Subject, W>): Check<Subject> {
  const say: Say<W> = (wording, facts, spots) => {
    const own: Wording | undefined = definition.wordings[wording];
    const severity = own?.severity ?? definition.severity;
    return {
      check: definition.id,
      wording,
      severity,
      verdict: own?.verdict ?? definition.verdict ?? verdictBySeverity[severity],
      facts,
      spots,
    };
  };
  return {
    ...definition,
    passing: definition.passing.map(exampleOf),
    failing: definition.failing.map((example) => {
      const { wording, says, fix } = example;
      const own: Wording | undefined = definition.wordings[wording];
      return { ...exampleOf<Subject>(example), wording, says: says ?? own?.says, fix: fix ?? own?.fix };
    }),
    find: (subject, catalogue) => definition.find(subject, catalogue, say),
  };
}

function exampleOf<Subject>({ shows, given }: WrittenExample<Subject>): Example<Subject> {
  const make = typeof given === "function" ? (given as (sample: Sample) => Subject) : () => given;
  return {
    shows,
    given: (catalogue) => {
      try {
        return make(sampleOf(catalogue));
      } catch (cause) {
        if (cause instanceof CannotShow) return undefined;
        throw cause;
      }
    },
  };
}

export const defineFileCheck = <const W extends Wordings>(definition: Definition<ReadFile, W>): FileCheck =>
  define(definition);

export const defineSheetCheck = <const W extends Wordings>(definition: Definition<Sheet, W>): SheetCheck =>
  define(definition);

export const defineOrderCheck = <const W extends Wordings>(
  definition: Definition<OrderSubject, W>,
): OrderCheck => define(definition);

export const defineLetterCheck = <const W extends Wordings>(
  definition: Definition<LetterSubject, W>,
): LetterCheck => define(definition);

/** Places of a sheet as spots; the sheet itself when none is named. */
export function at(sheet: Sheet, ...places: readonly Place[]): readonly Spot[] {
  return places.length === 0 ? [{ file: sheet.id }] : places.map((place) => ({ file: sheet.id, place }));
}

/** The label beside a place as this sheet's form prints it. */
export function labelOf(sheet: Sheet, place: Place): string {
  return sheet.prints[place]?.label ?? place;
}
