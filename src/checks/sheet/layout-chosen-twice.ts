import { layoutOf } from "../../catalogue/catalogue.ts";
import { at, defineSheetCheck } from "../check.ts";

export const layoutChosenTwice = defineSheetCheck({
  id: "layout-chosen-twice",
  title: "More than one layout is chosen",
  severity: "stops",
  source: { kind: "common practice" },
  why: "One device sheet orders one device.",
  wordings: {
    several: {
      says: "Several layouts are chosen: {layouts}.",
      fix: "Leave one; order a second device on a sheet of its own.",
    },
  },
  passing: [{ shows: "one layout", given: ({ device }) => device() }],
  failing: [
    {
      shows: "two boxes ticked",
      given: ({ device, layout, otherLayout }) => device({ layouts: [otherLayout.code, layout.code] }),
      wording: "several",
      says: "Several layouts are chosen: “Two buttons” and “Four buttons”.",
    },
  ],
  *find(sheet, catalogue, say) {
    if (sheet.kind !== "device" || sheet.layouts.length < 2) return;
    const layouts = sheet.layouts.map((code) => `“${layoutOf(catalogue, code)?.name ?? code}”`);
    yield say("several", { layouts }, at(sheet, "layout"));
  },
});
