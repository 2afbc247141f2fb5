import { buttonsOf } from "../../catalogue/catalogue.ts";
import { facesOf, roomOn } from "../../catalogue/faces.ts";
import type { FaceName } from "../../trade/legend.ts";
import { at, defineSheetCheck } from "../check.ts";
import { faceWords, type TypedRow, typedRows } from "../limits.ts";
import { without } from "../sample.ts";

export const rowWithoutFace = defineSheetCheck({
  id: "row-without-face",
  title: "Text stands where nothing can be cut",
  severity: "stops",
  source: { kind: "common practice" },
  why: "A form has room for the largest device or plate. Text beyond what is ordered would be lost, or the wrong size is chosen.",
  wordings: {
    button: {
      says: "There is text for {faces} (“{typed}”), but the layout chosen has {count:button}.",
      fix: "Choose the layout that has these buttons, or clear the text.",
    },
    gang: {
      says: "There is text for {faces} (“{typed}”), but the plate has {count:gang}.",
      fix: "Correct the number of gangs, or clear the text.",
    },
    plate: {
      says: "There is text for the plate legend (“{typed}”), but this device goes into a multi-gang plate.",
      fix: "Put it on the plate sheet and clear it here, or mark the device as standing alone.",
    },
    row: {
      says: "There is text in row {row} of {face} (“{typed}”), where {limit:row} can be cut.",
      fix: "Fit the legend into {limit:row} and clear the rest.",
    },
  },
  passing: [
    { shows: "text on every button there is", given: ({ device }) => device() },
    {
      shows: "text while no layout is chosen",
      given: ({ device }) => device({ layouts: [] }, { "6": ["AISLE", ""] }),
    },
    {
      shows: "a plate legend while nobody said where the device goes",
      given: ({ device }) => without(device({}, { plate: ["FOYER", ""] }), "standing"),
    },
  ],
  failing: [
    {
      shows: "text for gang five of four",
      given: ({ plate }) => plate({}, { "5": ["STAGE", ""] }),
      wording: "gang",
      says: "There is text for gang 5 (“STAGE”), but the plate has 4 gangs.",
    },
    {
      shows: "a plate legend on a device in a plate",
      given: ({ device }) => device({}, { plate: ["FOYER", ""] }),
      wording: "plate",
      says: "There is text for the plate legend (“FOYER”), but this device goes into a multi-gang plate.",
    },
    {
      shows: "a third row",
      given: ({ device }) => device({}, { "1": ["ALL", "THE", "REST"] }),
      wording: "row",
      says: "There is text in row 3 of button 1 (“REST”), where 2 rows can be cut.",
      fix: "Fit the legend into 2 rows and clear the rest.",
    },

    {
      shows: "text for two buttons more than there are",
      given: ({ device, layout }) =>
        device({}, { [buttonsOf(layout) + 1]: ["AISLE "], [buttonsOf(layout) + 2]: ["STAGE"] }),
      wording: "button",
      says: "There is text for button 5 and button 6 (“AISLE / STAGE”), but the layout chosen has 4 buttons.",
    },
  ],
  *find(sheet, catalogue, say) {
    const faces = facesOf(sheet, catalogue);
    const rows = typedRows(sheet).filter(({ text }) => text.trim() !== "");
    const isThere = (face: FaceName): boolean => faces?.includes(face) ?? true;

    const numbered = rows.filter(({ face }) => face !== "plate" && !isThere(face));
    if (numbered.length > 0)
      yield say(
        sheet.kind === "plate" ? "gang" : "button",
        {
          faces: [...new Set(numbered.map(({ face }) => faceWords(sheet, face)))],
          typed: joined(numbered),
          count: faces?.filter((face) => face !== "plate").length ?? 0,
        },
        at(sheet, ...numbered.map(({ place }) => place)),
      );

    const strip = rows.filter(({ face }) => face === "plate");
    if (strip.length > 0 && sheet.kind === "device" && sheet.standing === "in-plate")
      yield say("plate", { typed: joined(strip) }, at(sheet, ...strip.map(({ place }) => place)));

    for (const { face, row, text, place } of rows.filter(({ face }) => isThere(face))) {
      const { rows: limit } = roomOn(sheet, face, catalogue);
      if (row > limit)
        yield say("row", { row, face: faceWords(sheet, face), typed: text, limit }, at(sheet, place));
    }
  },
});

function joined(rows: readonly TypedRow[]): string {
  return rows.map(({ text }) => text.trim()).join(" / ");
}
