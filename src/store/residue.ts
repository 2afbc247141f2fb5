import type { Revision } from "../judging/changes.ts";
import { orderKey } from "../judging/state.ts";
import type { Problem } from "../trade/problem.ts";
import type { Judged } from "./write-judged.ts";

/** What stands for an erased person from then on. Nobody's address looks like it. */
export function standInOf(number: number): string {
  return `erased-${number}`;
}

export function isStandIn(buyer: string): boolean {
  return /^erased-\d+$/.test(buyer);
}

/** What things of one person are called once they are erased. What is not in it is called nothing. */
export interface NewNames {
  readonly standIn: string;
  /** Orders, by their keys. */
  readonly orders: ReadonlyMap<string, string>;
  /** Questions, by the key of their order and their own. */
  readonly questions: ReadonlyMap<string, string>;
  /** Addresses that the stand-in takes the place of. */
  readonly addresses: ReadonlySet<string>;
}

/** Where a question stands in `NewNames`, by the key of its order and its own. */
export function questionName(order: string, key: string): string {
  return `${order} ${key}`;
}

/** Who did something: an address gives way, and our own people stay. */
export function actorLeft(actor: string, { standIn, addresses }: NewNames): string {
  return addresses.has(actor) ? standIn : actor;
}

/**
 * What is left of a letter's change once its person is erased: which order of the stand-in came to what verdict, and
 * which checks asked. Orders made again of it count the same, and say nothing of anybody.
 */
export function residueOf({ changes, about, settles, decides, by }: Judged, names: NewNames): Judged {
  const orderOf = (number: string): string[] => {
    const name = names.orders.get(orderKey(number));
    return name === undefined ? [] : [name];
  };
  const ofQuestions = (some: Judged["settles"]): Judged["settles"] =>
    some.flatMap(({ order, key }) => {
      const name = names.questions.get(questionName(orderKey(order), key));
      return name === undefined ? [] : orderOf(order).map((one) => ({ order: one, key: name }));
    });
  return {
    buyer: names.standIn,
    changes: changes.flatMap((revision) =>
      orderOf(revision.number).map((number) => ({
        number,
        ...(revision.verdict === undefined ? {} : { verdict: revision.verdict }),
        missing: [],
        sheets: [],
        ...countedOf(revision),
        questions: revision.questions.map((question) => ({
          key: names.questions.get(questionName(orderKey(revision.number), question.key)) ?? "",
          number: question.number,
          problem: bareProblem(question.problem),
        })),
      })),
    ),
    about: about.flatMap(orderOf),
    settles: ofQuestions(settles),
    decides: ofQuestions(decides),
    kept: [],
    ...(by === undefined ? {} : { by: actorLeft(by, names) }),
  };
}

type Counted = Pick<Revision, "withdrawn" | "carried" | "problems">;

/** What figures count of a revision: its checks, that a letter's words were open in it, and which sheets it withdrew. */
export function countedOf({ withdrawn, carried, problems }: Counted): Counted {
  return {
    withdrawn,
    carried: carried.flatMap(({ letter, what }) => (what === "words" ? [{ letter, what, text: "" }] : [])),
    problems: problems.map(bareProblem),
  };
}

/** What figures count of a problem: the check, its weight, and the fields of its sheets. */
export function bareProblem({ check, wording, severity, verdict, spots }: Problem): Problem {
  const left = spots.map(({ file, place }) => ({ file, ...(place === undefined ? {} : { place }) }));
  return { check, wording, severity, verdict, facts: {}, spots: left };
}
