import { questionAnswered } from "../checks/letter/question-answered.ts";
import type { LetterRecord, OrderRecord } from "../trade/record.ts";

/** The last letter or note that has answered a point of an order with NO. */
export function lastNo({ letters, replies }: OrderRecord, number: number): LetterRecord | undefined {
  const said = [...letters, ...replies].filter(({ problems }) =>
    problems.some(({ check, wording, facts }) => {
      const { numbers } = facts;
      return (
        check === questionAnswered.id &&
        wording === "no" &&
        Array.isArray(numbers) &&
        numbers.includes(String(number))
      );
    }),
  );
  return said.toSorted((a, b) => b.letter - a.letter)[0];
}
