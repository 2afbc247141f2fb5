import { defineFileCheck } from "../check.ts";
import { fileAs } from "../sample.ts";

export const dynamicForm = defineFileCheck({
  id: "dynamic-form",
  title: "A form that only one viewer can show",
  severity: "stops",
  source: { kind: "house" },
  why: "Forms of this kind (XFA) are drawn by one maker’s viewer when it opens them. No other program sees their fields.",
  wordings: {
    refused: {
      says: "This form opens in one maker’s PDF viewer only, and its fields cannot be read here.",
      fix: "Fill in our device sheet or plate sheet instead. If this is no order, leave it out.",
    },
  },
  passing: [{ shows: "a sheet", given: fileAs("sheet") }],
  failing: [
    {
      shows: "a form made for one viewer",
      given: fileAs("dynamic-form"),
      wording: "refused",
    },
  ],
  *find({ id, kind }, _, say) {
    if (kind === "dynamic-form") yield say("refused", {}, [{ file: id }]);
  },
});
