import { at, defineSheetCheck } from "../check.ts";

/** Fields told by name, and characters of what stands in one; the sheet itself shows the rest. */
const most = { fields: 12, characters: 160 };

export const fieldNotRead = defineSheetCheck({
  id: "field-not-read",
  title: "A filled field that nothing reads",
  severity: "asks",
  verdict: "person",
  source: { kind: "house" },
  why: "A form may have a field that its edition does not name, since somebody added it or the edition forgot it. What is typed there is meant for us, and would be lost.",
  wordings: {
    unmapped: {
      says: "We do not know {count:field} of this sheet and make nothing of what stands there: {fields}.",
      fix: "One of us reads it. Reply whether it is to change anything in what is ordered.",
    },
  },
  passing: [
    { shows: "a sheet of which every filled field is known", given: ({ device }) => device() },
    { shows: "no such field", given: ({ device }) => device({ unmapped: [] }) },
  ],
  failing: [
    {
      shows: "a field that a distributor added to the form",
      given: ({ device }) => device({ unmapped: [{ name: "Cust_Rush", value: "needed by Friday" }] }),
      wording: "unmapped",
      says: "We do not know 1 field of this sheet and make nothing of what stands there: “Cust_Rush” says “needed by Friday”.",
    },
    {
      shows: "two, one of them a ticked box",
      given: ({ device }) =>
        device({
          unmapped: [
            { name: "Backlit", value: "Yes" },
            { name: "Extra line", value: "see\ndrawing" },
          ],
        }),
      wording: "unmapped",
      says: "We do not know 2 fields of this sheet and make nothing of what stands there: “Backlit” says “Yes” and “Extra line” says “see drawing”.",
    },
    {
      shows: "a field without a name",
      given: ({ device }) => device({ unmapped: [{ name: "", value: "4 pieces" }] }),
      wording: "unmapped",
      says: "We do not know 1 field of this sheet and make nothing of what stands there: one without a name says “4 pieces”.",
    },
  ],
  *find(sheet, _catalogue, say) {
    const { unmapped = [] } = sheet;
    if (unmapped.length === 0) return;
    const told = unmapped.slice(0, most.fields).map(({ name, value }) => {
      return `${name === "" ? "one without a name" : `“${short(name)}”`} says “${short(value)}”`;
    });
    const left = unmapped.length - told.length;
    const fields = left === 0 ? told : [...told, `${left} more`];
    yield say("unmapped", { count: unmapped.length, fields }, at(sheet));
  },
});

function short(value: string): string {
  const line = value.replace(/\s+/g, " ").trim();
  return line.length > most.characters ? `${line.slice(0, most.characters)}…` : line;
}
