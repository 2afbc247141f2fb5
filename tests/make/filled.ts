import type { Edition } from "../../src/reading/edition.ts";
import type { Place } from "../../src/trade/place.ts";
import type { Answers } from "./pdf.ts";

const said: Readonly<Partial<Record<Place, string>>> = {
  "contact.name": "Ines Calloway",
  "contact.email": "ines@brightwire.example",
  "contact.phone": "312-555-0117",
  project: "Larkspur Library",
  order: "BW-2207",
  mark: "S-104",
  "bill.name": "Brightwire Electric",
  "bill.street": "48 Foundry Row",
  "bill.city": "Chicago",
  "bill.state": "IL",
  "bill.postcode": "60607",
  "ship.name": "Larkspur site office",
  "ship.street": "2 Quay Street",
  "ship.city": "Rockford",
  "ship.state": "IL",
  "ship.postcode": "61101",
  standing: "in-plate",
  gangs: "4",
  layout: "D4",
  "legend-place": "middle",
  finish: "OAT",
  lettering: "INK",
  "part-key": "D4/OAT/INK-2",
  notes: "Deliver before 7 a.m.\nRing twice.",
};

/** The words of a form that has its own. */
const strangers: Readonly<Partial<Record<Place, string>>> = {
  standing: "Ganged",
  finish: "Beige",
  lettering: "Black",
};

/**
 * An answer for every field of an edition: position 2 of the four-gang plate S-104, every row filled with
 * its face and number, the second face left plain.
 */
export function answersFor({ name: edition, fields }: Edition): Answers {
  const gangsApart = fields.some(({ place }) => place === "gangs");
  return Object.fromEntries(
    fields.flatMap(({ name, place, values, ticked }): [string, string | true][] => {
      if (place === undefined) return [];
      if (ticked !== undefined) return ticked === "D4" ? [[name, true]] : [];
      if (place === "ship.same") return [[name, true]];
      if (place.startsWith("plain.")) return place === "plain.2" ? [[name, true]] : [];
      if (place.startsWith("row.")) return [[name, place.replace("row.", "R ")]];
      if (place === "position") return [[name, gangsApart ? "2" : "2 of 4"]];
      if (place === "edition") return [[name, edition]];
      const words = Object.keys(values).length > 0 ? strangers[place] : said[place];
      return words === undefined ? [] : [[name, words]];
    }),
  );
}
