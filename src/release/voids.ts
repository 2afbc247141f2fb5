import type { Sheet } from "../trade/sheet.ts";
import type { Voids } from "./release.ts";

/** What the engraving room has to take out of its way, and what is new, to read. */
export function voidsText({ revision, on, pieces, anew }: Voids): string {
  const voided = pieces.map(
    ({ sheet, engraved }) => `VOID: ${pieceOf(sheet)}${engraved ? " (engraved already: scrap it)" : ""}`,
  );
  const made = anew.map((sheet) => `NEW:  ${pieceOf(sheet)}`);
  return [
    `This release takes the place of revision ${revision}, released on ${on}.`,
    ...(voided.length + made.length === 0 ? ["Nothing that is cut has changed."] : [...voided, ...made]),
    "What stands here neither as void nor as new is as it was.",
    "",
  ].join("\n");
}

function pieceOf(sheet: Sheet): string {
  const place = sheet.kind === "plate" ? "plate" : `position ${sheet.position ?? "alone"}`;
  return `${sheet.mark ?? "no mark"} ${place} (${sheet.file}, ${sheet.finish ?? "no finish"})`;
}
