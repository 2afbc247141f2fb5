/**
 * How well the checks of orders, marks and what is not a legend do on orders written for this project: what honest
 * buyers are asked that a good clerk would not ask, which slips are found, and whether one fault is one problem. Half
 * of the cases was set aside before anything was tuned.
 *
 *     npx node tests/bench/order-slips.ts [--misses [--aside]]
 */
import { everyProblem, makeReport } from "../../src/judging/report.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { stateWith } from "../make/state.ts";
import { type Case, defects, defectsLater, honest, honestLater } from "./order-cases.ts";

const isAside = ({ shows }: Case): boolean =>
  [...shows].reduce((sum, letter) => sum + letter.charCodeAt(0), 0) % 2 === 1;

/** Checks that ask, stop or wait, on the last letter. */
function found({ letters }: Case): string[] {
  const numbered = letters.map((sheets, letter) =>
    sheets.map((sheet, i): Sheet => ({ ...sheet, id: `${letter + 1}/${i + 1}` })),
  );
  const earlier = numbered.slice(0, -1).flat();
  const sheets = numbered.at(-1) ?? [];
  const report = makeReport({ files: [], sheets }, catalogue, stateWith(earlier));
  return everyProblem(report)
    .filter(({ verdict }) => verdict !== "pass")
    .map(({ check }) => check);
}

const misses = process.argv.includes("--misses");
const sets = [
  {
    name: "tuned on",
    right: honest.filter((one) => !isAside(one)),
    wrong: defects.filter((one) => !isAside(one)),
  },
  { name: "set aside", right: honest.filter(isAside), wrong: defects.filter(isAside) },
  { name: "written later", right: honestLater, wrong: defectsLater },
];
for (const { name, right, wrong } of sets) {
  const miss = (one: Case, checks: string[]): void => {
    if (misses && !(name === "set aside" && !process.argv.includes("--aside")))
      console.log(`  ${one.finds ?? "honest"}: ${one.shows}: ${checks.join(", ") || "nothing found"}`);
  };
  const count = { asked: 0, caught: 0, alone: 0 };
  for (const one of right) {
    const checks = found(one);
    if (checks.length === 0) continue;
    count.asked++;
    miss(one, checks);
  }
  for (const one of wrong) {
    const checks = found(one);
    const isCaught = checks.filter((check) => check === one.finds).length >= (one.times ?? 1);
    const isAlone = isCaught && checks.every((check) => check === one.finds);
    if (isCaught) count.caught++;
    if (isAlone) count.alone++;
    else miss(one, checks);
  }
  console.log(
    `${name}: honest orders asked about ${count.asked} of ${right.length}; ` +
      `slips found ${count.caught} of ${wrong.length}, ${count.alone} of them and nothing else`,
  );
}
