import { at, defineOrderCheck } from "../check.ts";
import { rowPlaces } from "../limits.ts";
import { subject } from "../sample.ts";

export const abbreviationInconsistent = defineOrderCheck({
  id: "abbreviation-inconsistent",
  title: "One thing is abbreviated here and written out there",
  severity: "notes",
  source: { kind: "common practice" },
  why: "CONF RM on one wall and CONFERENCE ROOM on the next look like two rooms. Often only one of them had the space, so this holds nothing up.",
  wordings: {
    differs: {
      says: "{ways} in this order seem to say the same.",
      fix: "Nothing to do if both are meant so; each is cut as typed.",
    },
  },
  passing: [
    {
      shows: "one way throughout",
      given: ({ plate }) => subject([plate({}, { "1": ["CONF RM 1"], "2": ["CONF RM 2"] })]),
    },
    {
      shows: "an abbreviation of something else",
      given: ({ plate }) => subject([plate({}, { "1": ["STAFF RM"] })]),
    },
  ],
  failing: [
    {
      shows: "a room abbreviated on one sheet",
      given: ({ deviceAt, plate }) =>
        subject([
          plate({}, { "1": ["CONFERENCE", "ROOM 1"] }),
          deviceAt(1, {}),
          deviceAt(2, { legends: [{ face: "1", rows: ["CONF RM", "2"], plain: false }] }),
        ]),
      wording: "differs",
      says: "“CONF RM 2” and “CONFERENCE ROOM 1” in this order seem to say the same.",
    },
  ],
  *find({ order }, catalogue, say) {
    const legends = order.sheets.flatMap((sheet) =>
      sheet.legends
        .filter((one) => !one.plain)
        .map(({ face, rows }) => {
          // Rooms that differ by their number are still the same word.
          const words =
            rows
              .join(" ")
              .toUpperCase()
              .replace(/\d+/g, "")
              .match(/[\p{L}']+/gu) ?? [];
          const long = words.map((word) => catalogue.words.expansions(word)[0] ?? word).join(" ");
          const spots = at(sheet, ...rowPlaces(sheet, face, catalogue));
          return { typed: rows.join(" ").trim(), written: words.join(" "), long, spots };
        }),
    );
    for (const same of Map.groupBy(legends, ({ long }) => long).values()) {
      const ways = [...Map.groupBy(same, ({ written }) => written).values()].map(
        (alike) => `“${alike.map(({ typed }) => typed).toSorted()[0]}”`,
      );
      if (ways.length > 1)
        yield say(
          "differs",
          { ways: ways.toSorted() },
          same.flatMap(({ spots }) => spots),
        );
    }
  },
});
