/**
 * How well the checks of orders, marks and what is not a legend do on orders written for this project: what honest
 * buyers are asked that a good clerk would not ask, which slips are found, and whether one fault is one problem. Half
 * of the cases was set aside before anything was tuned.
 *
 *     node tests/bench/order-slips.ts [--misses [--aside]]
 */
import { everyProblem, makeReport } from "../../src/judging/report.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { type Case, defects, honest } from "./order-cases.ts";

const isAside = ({ shows }: Case): boolean =>
  [...shows].reduce((sum, letter) => sum + letter.charCodeAt(0), 0) % 2 === 1;

/** Checks that ask, stop or wait, on the last letter. */
function found({ letters }: Case): string[] {
  const numbered = letters.map((sheets, letter) =>
    sheets.map((sheet, i): Sheet => ({ ...sheet, id: `${letter + 1}/${i + 1}` })),
  );
  const earlier = numbered.slice(0, -1).flat();
  const sheets = numbered.at(-1) ?? [];
  const report = makeReport({ files: [], sheets, earlier }, catalogue);
  return everyProblem(report)
    .filter(({ verdict }) => verdict !== "pass")
    .map(({ check }) => check);
}

const misses = process.argv.includes("--misses");
for (const aside of [false, true]) {
  const count = { honest: 0, asked: 0, defects: 0, caught: 0, alone: 0 };
  const miss = (one: Case, checks: string[]): void => {
    if (misses && aside === process.argv.includes("--aside"))
      console.log(`  ${one.finds ?? "honest"}: ${one.shows}: ${checks.join(", ") || "nothing found"}`);
  };
  for (const one of honest.filter((each) => isAside(each) === aside)) {
    const checks = found(one);
    count.honest++;
    if (checks.length > 0) count.asked++;
    if (checks.length > 0) miss(one, checks);
  }
  for (const one of defects.filter((each) => isAside(each) === aside)) {
    const checks = found(one);
    const right = checks.filter((check) => check === one.finds).length >= (one.times ?? 1);
    const only = right && checks.every((check) => check === one.finds);
    count.defects++;
    if (right) count.caught++;
    if (only) count.alone++;
    if (!only) miss(one, checks);
  }
  console.log(
    `${aside ? "set aside" : "tuned on"}: honest orders asked about ${count.asked} of ${count.honest}; ` +
      `slips found ${count.caught} of ${count.defects}, ${count.alone} of them and nothing else`,
  );
}
