import type { Layout } from "../../catalogue/catalogue.ts";
import { leastCap, readableCap } from "../../catalogue/engraving.ts";
import { fitLegend } from "../../lettering/fit.ts";
import { widthOf } from "../../lettering/row.ts";
import type { DeviceSheet } from "../../trade/sheet.ts";
import { at, defineSheetCheck } from "../check.ts";
import { fittedLegends } from "../fitted.ts";
import { faceWords } from "../limits.ts";
import { cannotShow, type Sample } from "../sample.ts";

export const lettersTooSmall = defineSheetCheck({
  id: "letters-too-small",
  title: "A legend fits only with very small letters",
  severity: "asks",
  sender: "settles",
  source: {
    kind: "standard",
    name: "ISO 9241-3:1992, character height: at least 16 minutes of arc (quoted at second hand)",
  },
  why: "A row too wide for its face is cut smaller until it fits. Below 16 minutes of arc at the distance from which a station is read, people begin to misread; only the buyer knows whether that matters there.",
  wordings: {
    small: {
      says: "Row {row} of {face}, “{typed}”, fits only with letters {cap} mm high. {least} mm is the least {reason}.",
      fix: "Shorten it or split it over the rows.",
    },
  },
  passing: [
    { shows: "letters at their full height", given: ({ plate }) => plate() },
    {
      shows: "letters a little smaller than the layout has them",
      given: (sample) => withRow(sample, (cap, least, { face }) => cap >= least && cap < face.cap),
    },
    {
      shows: "a row that does not fit at all, which another check tells",
      given: ({ device, narrow }) =>
        device({ layouts: [narrow.code] }, { "1": ["W".repeat(narrow.characters), ""] }),
    },
  ],
  failing: [
    {
      shows: "wide letters on a small button",
      given: (sample) => withRow(sample, (cap, least) => cap < least),
      wording: "small",
      says: "Row 1 of button 1, “NNNNNNAA”, fits only with letters 2.32 mm high. 2.33 mm is the least that is read with ease from 500 mm away.",
    },
  ],
  *find(sheet, catalogue, say) {
    const { engraving } = catalogue;
    const { fit } = engraving;
    // The catalogue has no face whose letters are too small to begin with.
    if (fit === "fixed") return;
    const least = leastCap(engraving);
    const isArc = least === readableCap(engraving.reading_distance);
    const reason = isArc
      ? `that is read with ease from ${engraving.reading_distance} mm away`
      : "that is cut without asking";
    for (const { face, fitted, rows } of fittedLegends(sheet, catalogue)) {
      if (!fitted.fits || fitted.cap >= least) continue;
      for (const { row, text } of rows) {
        const isCause =
          widthOf(text, { ...fitted, cap: fitted.cap + fit.step }) + fitted.cutter > fitted.room;
        if (!isCause) continue;
        yield say(
          "small",
          {
            row,
            face: faceWords(sheet, face),
            typed: text,
            cap: fitted.cap,
            // Rounded upwards: 2.327 mm is not reached with 2.32.
            least: (Math.ceil(least * 100) / 100).toFixed(2),
            reason,
          },
          at(sheet, `row.${face}.${row}`),
        );
      }
    }
  },
});

/** The sample with a full row on the narrowest button that fits it with letters as high as is wanted. */
function withRow(
  { device, narrow, catalogue }: Sample,
  is: (cap: number, least: number, layout: Layout) => boolean,
): DeviceSheet {
  const { engraving } = catalogue;
  const counts = Array.from({ length: narrow.characters + 1 }, (_, n) => n);
  const rows = counts.flatMap((wide) =>
    counts
      .filter((narrower) => wide + narrower <= narrow.characters)
      .map(
        (narrower) =>
          "W".repeat(wide) + "N".repeat(narrower) + "A".repeat(narrow.characters - wide - narrower),
      ),
  );
  const row = rows.find((text) => {
    const { fits, cap } = fitLegend([text], narrow.face, engraving);
    return fits && is(cap, leastCap(engraving), narrow);
  });
  return row === undefined ? cannotShow("row") : device({ layouts: [narrow.code] }, { "1": [row] });
}
