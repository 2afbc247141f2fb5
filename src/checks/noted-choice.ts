import type { Catalogue } from "../catalogue/catalogue.ts";
import type { Sheet } from "../trade/sheet.ts";

/** The field of the finish or lettering, if notes name another one and nothing else: "in Chalk", "Finish: Oat". */
export function choiceAgainst(
  notes: string,
  sheet: Sheet,
  { finishes, lettering }: Catalogue,
): "finish" | "lettering" | undefined {
  const word = notes
    .replaceAll(/\b(?:finish|lettering|colou?r|device|plate|body|text|in)\b/gi, "")
    .replaceAll(/[^\p{L}\p{N} ]/gu, "")
    .trim();
  const isNamed = ({ code, name }: { readonly code: string; readonly name: string }): boolean =>
    [code, name].some((one) => one.toUpperCase() === word.toUpperCase());
  const said = [sheet.finish, sheet.lettering];
  const [finish, letters] = [finishes.find(isNamed), lettering.find(isNamed)];
  if (finish !== undefined && letters === undefined && sheet.finish !== undefined)
    return said.includes(finish.code) ? undefined : "finish";
  if (letters !== undefined && finish === undefined && sheet.lettering !== undefined)
    return said.includes(letters.code) ? undefined : "lettering";
  return undefined;
}
