import { isAboutWord } from "../checks/asked.ts";
import type { CheckTally, Figures } from "./figures.ts";

/** Fewer questions than these say nothing of a check, and fewer slips nothing of a buyer. */
const least = { questions: 5, slips: 3 } as const;
/** So many of the questions that have ended were answered with yes. */
const nearlyAll = 0.9;

/** What the figures teach, in sentences. */
export function trendsOf({ byField, byBuyer, questions, slips }: Figures): string[] {
  const [field] = byField;
  const share = (some: number): string => `${Math.round((100 * some) / slips)} % of ${slips}`;
  return [
    ...(field === undefined
      ? []
      : [`The field that fails most: ${field.name}, ${field.slips} slips (${share(field.slips)}).`]),
    ...byBuyer
      .filter((buyer) => buyer.slips >= least.slips && buyer.orders > 0)
      .slice(0, 3)
      .map(
        (buyer) =>
          `A call may help ${buyer.name}: ${buyer.slips} slips in ${buyer.orders} ${buyer.orders === 1 ? "order" : "orders"} (${share(buyer.slips)}).`,
      ),
    ...questions
      .filter(criesWolf)
      .map(
        ({ check, yes, decided, corrected }) =>
          `${check} is nearly always answered YES: ${yes + decided} of ${yes + decided + corrected}.${isAboutWord({ check }) ? " What it asks about may belong in the glossary." : ""}`,
      ),
  ];
}

/** Nearly all who answered its questions said that it is meant so. */
export function criesWolf({ yes, decided, corrected }: CheckTally): boolean {
  const ended = yes + decided + corrected;
  return ended >= least.questions && (yes + decided) / ended >= nearlyAll;
}
