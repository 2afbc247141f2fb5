import { defineFileCheck } from "../check.ts";
import { fileAs } from "../sample.ts";

export const unknownForm = defineFileCheck({
  id: "unknown-form",
  title: "A form that is not one of ours",
  severity: "stops",
  source: { kind: "house" },
  why: "A sheet is known by the names of its fields. On a form that nobody has described, no field can be told from another.",
  wordings: {
    near: {
      says: "This form is not known here; it is most like “{nearest}”.",
      fix: "Fill in “{nearest}” and send that instead.",
    },
    strange: {
      says: "This form is not known here, and its fields cannot be read.",
      fix: "Fill in our device sheet or plate sheet instead. If it is no order, leave it out.",
    },
  },
  passing: [{ shows: "a sheet", given: fileAs("sheet") }],
  failing: [
    {
      shows: "a form much like a device sheet",
      given: { ...fileAs("unknown-form"), nearest: "Device sheet, edition 26c" },
      wording: "near",
      says: "This form is not known here; it is most like “Device sheet, edition 26c”.",
      fix: "Fill in “Device sheet, edition 26c” and send that instead.",
    },
    {
      shows: "a form like none of ours",
      given: fileAs("unknown-form"),
      wording: "strange",
    },
  ],
  *find({ id, kind, nearest }, _, say) {
    if (kind !== "unknown-form") return;
    if (nearest === undefined) yield say("strange", {}, [{ file: id }]);
    else yield say("near", { nearest }, [{ file: id }]);
  },
});
