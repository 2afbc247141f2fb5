import { type Catalogue, finishOf, layoutOf, letteringOf } from "../catalogue/catalogue.ts";

/** What stands at a place, in quotation marks: a choice by its name. */
export function quotedChoice(typed: string, catalogue: Catalogue): string {
  if (typed === "") return "(empty)";
  const known = finishOf(catalogue, typed) ?? letteringOf(catalogue, typed) ?? layoutOf(catalogue, typed);
  return `“${known?.name ?? typed}”`;
}
