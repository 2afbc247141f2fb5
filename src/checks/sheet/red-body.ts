import { finishOf } from "../../catalogue/catalogue.ts";
import { isRed } from "../../lettering/contrast.ts";
import { at, defineSheetCheck } from "../check.ts";

export const redBody = defineSheetCheck({
  id: "red-body",
  title: "The body is red",
  severity: "asks",
  source: { kind: "common practice" },
  why: "Red controls are mostly kept for emergency and for stopping. Whether one may be red here depends on what it does; local code and a licensed electrician decide.",
  wordings: {
    red: {
      says: "The finish {finish} is red, a colour mostly kept for emergency controls. This desk does not know how it is wired.",
      fix: "Reply that red is meant and agrees with local code, or choose another finish.",
    },
  },
  passing: [{ shows: "a body that is not red", given: ({ device }) => device() }],
  failing: [
    {
      shows: "a red body",
      given: ({ aloneDevice, finishThat }) =>
        aloneDevice({ finish: finishThat(({ devices, colour }) => devices && isRed(colour)) }),
      wording: "red",
      says: "The finish Brick is red, a colour mostly kept for emergency controls. This desk does not know how it is wired.",
    },
  ],
  *find(sheet, catalogue, say) {
    const finish = finishOf(catalogue, sheet.finish ?? "");
    if (finish !== undefined && isRed(finish.colour))
      yield say("red", { finish: finish.name }, at(sheet, "finish"));
  },
});
