import { expect, test } from "vitest";
import { ageOf, byArrival } from "../../src/orders/age.ts";
import type { Arrivals } from "../../src/trade/letter.ts";

const hour = 3_600_000;
const noon = Date.UTC(2026, 10, 9, 12);

/** Letters 1, 2, … that arrived so many hours after a noon, and that bear the date of so many hours after it. */
function arrivals(...hours: (readonly [arrived: number, dated?: number])[]): Arrivals {
  return new Map(
    hours.map(([arrived, dated], i) => [
      `${i + 1}`,
      {
        receivedAt: new Date(noon + arrived * hour),
        ...(dated === undefined ? {} : { dated: new Date(noon + dated * hour) }),
      },
    ]),
  );
}

/** How old a file of letter 1 is beside one of letter 2, told from both sides. */
const ages = (all: Arrivals) => [ageOf("1/1", "2/1", all), ageOf("2/1", "1/1", all)];
const [firstIsNewer, secondIsNewer, unclear] = [
  ["newer", "older"],
  ["older", "newer"],
  ["unclear", "unclear"],
];

test("two files of one letter have one age", () => {
  expect(ageOf("1/1", "1/2", arrivals([0, 0]))).toBe("same letter");
});

test("a letter that arrived later and is dated later is newer, whatever its number", () => {
  expect(ages(arrivals([0, 0], [1, 1]))).toEqual(secondIsNewer);
  expect(ages(arrivals([1, 1], [0, 0]))).toEqual(firstIsNewer);
});

test("where date and arrival disagree it is unclear", () => {
  expect(ages(arrivals([0, 1], [1, 0]))).toEqual(unclear);
  expect(ages(arrivals([1, 0], [0, 1]))).toEqual(unclear);
});

test("a millisecond tells as much as a day", () => {
  const ms = 1 / hour;
  expect(ages(arrivals([ms, 0], [0, ms]))).toEqual(unclear);
  expect(ages(arrivals([ms], [0]))).toEqual(firstIsNewer);
  expect(ages(arrivals([0, ms], [0, 0]))).toEqual(firstIsNewer);
});

test("where one of the two is equal or not known, the other tells", () => {
  expect(ages(arrivals([0, 1], [0, 0]))).toEqual(firstIsNewer);
  expect(ages(arrivals([1, 0], [0, 0]))).toEqual(firstIsNewer);
  expect(ages(arrivals([1], [0, 5]))).toEqual(firstIsNewer);
  expect(ages(arrivals([1, -5], [0]))).toEqual(firstIsNewer);
});

test("where neither tells, the number of the letter does", () => {
  expect(ages(arrivals([0, 0], [0, 0]))).toEqual(secondIsNewer);
  expect(ageOf("10/1", "9/1", new Map())).toBe("newer");
  expect(ageOf("9/1", "10/1", new Map())).toBe("older");
});

test("the number tells too where one of them has no time", () => {
  expect(ages(arrivals([5, 5]))).toEqual(secondIsNewer);
});

// RFC 5321 §4.5.4.1: mail servers give up after 4 to 5 days.
test("a date that lies more than five days behind the arrival says nothing", () => {
  expect(ages(arrivals([0, 120], [1, 1]))).toEqual(unclear);
  expect(ages(arrivals([0, 120 + 1 / hour], [1, 1]))).toEqual(secondIsNewer);
});

test("beside another clock that was ahead it says something", () => {
  expect(ages(arrivals([0, 400], [1, 300]))).toEqual(unclear);
  expect(ages(arrivals([0, 300], [1, 400]))).toEqual(secondIsNewer);
});

test("files are sorted by the arrival of their letters, then as they stand in them", () => {
  const sorted = (...ids: string[]) => ids.toSorted(byArrival(arrivals([1], [0])));
  expect(sorted("1/1", "2/10", "2/9")).toEqual(["2/9", "2/10", "1/1"]);
  expect(sorted("1/1", "3/1")).toEqual(["3/1", "1/1"]);
  expect(["4/1", "3/1"].toSorted(byArrival(new Map()))).toEqual(["3/1", "4/1"]);
});
