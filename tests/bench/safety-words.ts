/**
 * How well `safety-wording` tells what has to be asked from what no good clerk would ask, on legends written for this
 * project. The unseen ones were written before the list, and never used to tune it.
 *
 *     node tests/bench/safety-words.ts [--misses]
 */
import { kinds, languagesOf, legendsIn, isAskedAbout } from "./safety.ts";

for (const set of ["", "unseen-"])
  for (const language of ["", "-french", "-spanish"])
    for (const kind of kinds) {
      const legends = legendsIn(`${set}${kind}${language}`);
      const asked = legends.filter((legend) => isAskedAbout(legend, languagesOf(language)));
      const share = ((100 * asked.length) / legends.length).toFixed(1);
      console.log(`${`${set}${kind}${language}`.padEnd(24)} asked about ${asked.length}/${legends.length} ${share} %`);
      const wrong = legends.filter((legend) => asked.includes(legend) !== (kind === "asked"));
      if (process.argv.includes("--misses")) console.log(wrong.map((one) => `  ${one}`).join("\n"));
    }
