import { finishOf, letteringOf } from "../../catalogue/catalogue.ts";
import { contrastRatio } from "../../lettering/contrast.ts";
import { at, defineSheetCheck } from "../check.ts";
import { leastContrast, leastLarge } from "../finishes.ts";

export const letteringUnreadable = defineSheetCheck({
  id: "lettering-unreadable",
  title: "The lettering can hardly be read on this finish",
  severity: "stops",
  waivable: true,
  sender: "settles",
  source: { kind: "standard", name: "WCAG 2.2, success criterion 1.4.3, contrast (minimum)" },
  why: "Engraved plates are outside the scope of WCAG, but its formula tells how well two colours stand apart. It asks for 4.5 to 1 in text, and for 3 to 1 in large text; to stop what has less than 3 is a rule of ours. The colours are those of a screen and only come near those of the plastic.",
  wordings: {
    unknown: {
      says: "“{lettering}” is not a lettering colour that we make.",
      fix: "Choose one of these: {made|or}.",
    },
    low: {
      says: "{lettering} lettering can hardly be read on {finish}: contrast {ratio} to 1, and at least 3 is needed.",
      fix: "Choose {best} lettering, which gives {bestRatio} to 1, or another finish.",
    },
    faint: {
      says: "{lettering} lettering is faint on {finish}: contrast {ratio} to 1, where 4.5 is good.",
      fix: "Choose {best} lettering, which gives {bestRatio} to 1.",
      severity: "asks",
    },
  },
  passing: [
    { shows: "dark on light", given: ({ device }) => device() },
    {
      shows: "colours far apart",
      given: ({ device, coloursThat }) => device(coloursThat((ratio) => ratio > 7)),
    },
  ],
  failing: [
    {
      shows: "a colour that the catalogue does not know",
      given: ({ device }) => device({ lettering: "Gold" }),
      wording: "unknown",
      says: "“Gold” is not a lettering colour that we make.",
      fix: "Choose one of these: Ink, Milk or Rust.",
    },
    {
      shows: "two middling colours",
      given: ({ device, coloursThat }) => device(coloursThat((ratio) => ratio >= 3 && ratio < 4.5)),
      wording: "faint",
      says: "Rust lettering is faint on Heron: contrast 3.01 to 1, where 4.5 is good.",
      fix: "Choose Ink lettering, which gives 6.68 to 1.",
    },

    {
      shows: "two colours that are nearly one",
      given: ({ device, coloursThat }) => device(coloursThat((ratio) => ratio < 1.5)),
      wording: "low",
      fix: "Choose Ink lettering, which gives 15.08 to 1, or another finish.",
      says: "Milk lettering can hardly be read on Chalk: contrast 1.04 to 1, and at least 3 is needed.",
    },
  ],
  *find(sheet, catalogue, say) {
    if (sheet.lettering === undefined) return;
    const chosen = letteringOf(catalogue, sheet.lettering);
    if (chosen === undefined) {
      const made = catalogue.lettering.map(({ name }) => name);
      yield say("unknown", { lettering: sheet.lettering, made }, at(sheet, "lettering"));
      return;
    }
    const body = finishOf(catalogue, sheet.finish ?? "");
    if (body === undefined) return;
    const on = ({ colour }: { colour: string }): number => contrastRatio(colour, body.colour);
    if (on(chosen) >= leastContrast) return;
    const best = catalogue.lettering.reduce((one, other) => (on(other) > on(one) ? other : one), chosen);
    yield say(
      on(chosen) < leastLarge ? "low" : "faint",
      {
        lettering: chosen.name,
        finish: body.name,
        ratio: cutOff(on(chosen)),
        best: best.name,
        bestRatio: cutOff(on(best)),
      },
      at(sheet, "lettering", "finish"),
    );
  },
});

/** Two decimals, the rest left off: 2.9953 must not read as the 3 that it fails to reach. */
function cutOff(ratio: number): string {
  return (Math.floor(ratio * 100) / 100).toFixed(2);
}
