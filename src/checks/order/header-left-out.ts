import type { Entry } from "../../trade/place.ts";
import { at, defineOrderCheck } from "../check.ts";
import { type Sample, subject } from "../sample.ts";

/** What is left out, in words. */
const names: readonly (readonly [string, string])[] = [
  ["order", "the order number"],
  ["project", "the project"],
  ["contact.", "the contact"],
  ["bill.", "the bill-to address"],
  ["ship.", "the ship-to address"],
];

const from = "S-104 plate.pdf";
const heir = ({ deviceAt }: Sample, position: number, ...places: readonly Entry[]) =>
  deviceAt(position, { inherited: [{ places, from }] });

export const headerLeftOut = defineOrderCheck({
  id: "header-left-out",
  title: "Sheets leave out what another sheet of their order says",
  severity: "notes",
  source: { kind: "house" },
  why: "Project, contact and addresses are the same for a whole order, so they need not be typed on each sheet of a letter. Whoever reads the answer sees where they were taken from.",
  wordings: {
    taken: {
      says: "Left out on {count:sheet}: {what}. Taken from {from}.",
      fix: "Nothing to do if it is the same for all of them.",
    },
  },
  passing: [{ shows: "everything on every sheet", given: ({ completeOrder }) => subject(completeOrder()) }],
  failing: [
    {
      shows: "two devices that leave the addresses to their plate sheet",
      given: (sample) =>
        subject([
          sample.plate(),
          heir(sample, 1, "bill.name", "bill.street", "ship.same"),
          heir(sample, 2, "bill.name", "bill.street", "ship.same"),
        ]),
      wording: "taken",
      says: "Left out on 2 sheets: the bill-to address and the ship-to address. Taken from S-104 plate.pdf.",
    },
    {
      shows: "a device that leaves its order number to its plate sheet",
      given: (sample) => subject([sample.plate(), heir(sample, 1, "order")]),
      wording: "taken",
      says: "Left out on 1 sheet: the order number. Taken from S-104 plate.pdf.",
    },
  ],
  *find({ order }, _catalogue, say) {
    const heirs = order.sheets.flatMap((sheet) => {
      const { inherited = [] } = sheet;
      const taken = inherited.flatMap(({ places }) => places);
      const what = names.flatMap(([begins, name]) =>
        taken.some((place) => place.startsWith(begins)) ? [name] : [],
      );
      return what.length === 0
        ? []
        : [{ sheet, taken, what, from: [...new Set(inherited.map((one) => one.from))] }];
    });
    const alike = Map.groupBy(heirs, ({ what, from }) => JSON.stringify([what, from]));
    for (const [first, ...more] of alike.values()) {
      if (first === undefined) continue;
      const all = [first, ...more];
      yield say(
        "taken",
        { count: all.length, what: first.what, from: first.from },
        all.flatMap(({ sheet, taken }) => at(sheet, ...taken)),
      );
    }
  },
});
