import { type Finish, finishOf } from "../../catalogue/catalogue.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { at, defineSheetCheck } from "../check.ts";
import { finishesToOffer, hasFinishMade } from "../finishes.ts";

const forOne = ({ devices, plates }: Finish): boolean => devices && plates.join() === "1";

export const finishNotMade = defineSheetCheck({
  id: "finish-not-made",
  title: "The finish is not made in this size",
  severity: "stops",
  source: { kind: "common practice" },
  why: "Not every finish is moulded in every size: the larger the plate, the fewer there are.",
  wordings: {
    unknown: {
      says: "“{finish}” is not a finish that we make.",
      fix: "For {what} choose one of these: {made|or}.",
    },
    size: {
      says: "{finish} is not made for {what}.",
      fix: "Choose {made|or} instead.",
    },
  },
  passing: [
    {
      shows: "the largest plate that its finish is made for",
      given: ({ plate, widest }) => plate({ gangs: widest - 1 }),
    },
    {
      shows: "a finish made for one gang on a device alone",
      given: ({ aloneDevice, finishThat }) => aloneDevice({ finish: finishThat(forOne) }),
    },
    {
      shows: "a device in a plate larger than its finish is made for",
      given: ({ device, finishThat }) => device({ finish: finishThat(forOne) }),
    },
  ],
  failing: [
    {
      shows: "a finish that the catalogue does not know",
      given: ({ device }) => device({ finish: "Mauve" }),
      wording: "unknown",
      says: "“Mauve” is not a finish that we make.",
      fix: "For a device choose one of these: Chalk or Oat.",
    },
    {
      shows: "a finish for plates alone on a device",
      given: ({ device, finishThat }) => device({ finish: finishThat(({ devices }) => !devices) }),
      wording: "size",
      fix: "Choose Chalk or Oat instead.",
      says: "Bare tin is not made for a device.",
    },
    {
      shows: "a plate larger than its finish is made for",
      given: ({ plate, widest }) => plate({ gangs: widest }),
      wording: "size",
      says: "Oat is not made for a plate of 6 gangs.",
      fix: "Choose Chalk instead.",
    },
  ],
  *find(sheet, catalogue, say) {
    if (sheet.finish === undefined || hasFinishMade(sheet, catalogue) !== false) return;
    const finish = finishOf(catalogue, sheet.finish);
    const made = finishesToOffer(sheet, catalogue).map(({ name }) => name);
    yield say(
      finish === undefined ? "unknown" : "size",
      { finish: finish?.name ?? sheet.finish, what: whatOf(sheet), made },
      at(sheet, "finish"),
    );
  },
});

function whatOf(sheet: Sheet): string {
  if (sheet.kind === "device") return sheet.standing === "alone" ? "a device standing alone" : "a device";
  return sheet.gangs === undefined ? "a plate" : `a plate of ${sheet.gangs} gangs`;
}
