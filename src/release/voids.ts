import { inOneLine } from "../drawing/proof/shapes.ts";
import { hasText } from "../trade/legend.ts";
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

/** "P-2 position 1 (P-2.pdf, CHK): “SOUTH / TERRACE”, “OFF”": two pieces of one place differ by what is cut. */
function pieceOf({ mark = "no mark", file, finish = "no finish", legends, ...sheet }: Sheet): string {
  const place = sheet.kind === "plate" ? "plate" : `position ${sheet.position ?? "alone"}`;
  const cut = legends
    .filter((legend) => hasText(legend) && !legend.plain)
    .map(({ rows }) => `“${rows.filter((row) => row.trim() !== "").join(" / ")}”`);
  const says = cut.length === 0 ? "no legend" : cut.join(", ");
  return inOneLine(`${mark} ${place} (${file}, ${finish}): ${says}`);
}
