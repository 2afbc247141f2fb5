import { expect, test } from "vitest";
import { isAskedAbout, kinds, legendsIn, shops } from "../bench/safety.ts";

const sets = Object.entries(shops).flatMap(([language, words]) =>
  kinds.map((kind) => ({ file: `${kind}${language}`, kind, words })),
);

test.each(sets)("legends of the file $file are told apart", ({ file, kind, words }) => {
  const legends = legendsIn(file);
  expect(legends.length).toBeGreaterThan(0);
  expect(legends.filter((legend) => isAskedAbout(legend, words) !== (kind === "asked"))).toEqual([]);
});

test("a word of safety is asked about in a language that no setting names", () => {
  for (const legend of ["SORTIE", "INCENDIO", "PELIGRO", "ARRET/URGENCE"])
    expect(isAskedAbout(legend, shops[""])).toBe(true);
});
