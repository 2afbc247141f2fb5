import { type Catalogue, layoutOf } from "../../catalogue/catalogue.ts";
import { english } from "../../lettering/safety/english.ts";
import { sayTogether, speaksOfSafety } from "../../lettering/safety/speaks.ts";
import { hasText, type Legend } from "../../trade/legend.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { at, defineSheetCheck } from "../check.ts";
import { faceWords, rowPlaces } from "../limits.ts";

export const safetyWording = defineSheetCheck({
  id: "safety-wording",
  title: "A legend speaks of safety",
  severity: "asks",
  source: { kind: "house" },
  why: [
    "A button that says EMERGENCY or DISCONNECT promises something that depends on the wiring. Legends are cut as typed; the program does not know the wiring; local code and a licensed electrician decide.",
    ...english.families.map(({ why }) => why),
  ].join(" "),
  wordings: {
    safety: {
      says: "“{typed}” on {face} speaks of safety. It is cut as typed, and this desk does not know how the button is wired.",
      fix: "Reply that a licensed electrician has seen that it agrees with local code, or change the legend.",
    },
  },
  passing: [
    { shows: "a main lobby", given: ({ plate }) => plate({}, { "1": ["MAIN LOBBY", ""] }) },
    {
      shows: "words that hold such letters",
      given: ({ plate }) => plate({}, { "1": ["EMPLOYEES", ""], "2": ["MEMBERS"] }),
    },
    { shows: "EXIT in a longer legend", given: ({ device }) => device({}, { "1": ["EXIT", "SCENE"] }) },
    { shows: "a fireplace", given: ({ device }) => device({}, { "1": ["FIRE", "PLACE"] }) },
    {
      shows: "a fire pit over two buttons",
      given: ({ device }) => device({}, { "1": ["FIRE"], "2": ["PIT"] }),
    },
  ],
  failing: [
    {
      shows: "emergency lighting",
      given: ({ device }) => device({}, { "1": ["EMERG", "LIGHTS"] }),
      wording: "safety",
      says: "“EMERG LIGHTS” on button 1 speaks of safety. It is cut as typed, and this desk does not know how the button is wired.",
    },
    {
      shows: "EXIT and no more",
      given: ({ device }) => device({}, { "1": ["EXIT", ""] }),
      wording: "safety",
      says: "“EXIT” on button 1 speaks of safety. It is cut as typed, and this desk does not know how the button is wired.",
    },
    {
      shows: "a phrase over two rows",
      given: ({ device }) => device({}, { "1": ["POWER", "OFF"] }),
      wording: "safety",
      says: "“POWER OFF” on button 1 speaks of safety. It is cut as typed, and this desk does not know how the button is wired.",
    },
    {
      shows: "what fits on eight characters",
      given: ({ device }) => device({}, { "1": ["DISC SW"] }),
      wording: "safety",
      says: "“DISC SW” on button 1 speaks of safety. It is cut as typed, and this desk does not know how the button is wired.",
    },
    {
      shows: "a word over two rows",
      given: ({ device }) => device({}, { "1": ["DIS-", "CONNECT"] }),
      wording: "safety",
      says: "“DIS- CONNECT” on button 1 speaks of safety. It is cut as typed, and this desk does not know how the button is wired.",
    },
    {
      shows: "a phrase over two buttons",
      given: ({ device }) => device({}, { "1": ["KILL"], "2": ["PWR"] }),
      wording: "safety",
      says: "“KILL PWR” on button 1 and button 2 speaks of safety. It is cut as typed, and this desk does not know how the button is wired.",
    },
    {
      shows: "a strip that calls it a disconnect",
      given: ({ aloneDevice }) => aloneDevice({}, { plate: ["DISCONNECT"] }),
      wording: "safety",
      says: "“DISCONNECT” on the plate legend speaks of safety. It is cut as typed, and this desk does not know how the button is wired.",
    },
  ],
  *find(sheet, catalogue, say) {
    const { words } = catalogue;
    const legends = sheet.legends.filter((one) => !one.plain && hasText(one));
    const told = new Set<Legend>();
    const tell = (...faces: readonly Legend[]) =>
      say(
        "safety",
        {
          typed: faces
            .flatMap(({ rows }) => rows)
            .join(" ")
            .replace(/\s+/g, " ")
            .trim(),
          face: faces.map(({ face }) => faceWords(sheet, face)).join(" and "),
        },
        at(sheet, ...faces.flatMap(({ face }) => rowPlaces(sheet, face, catalogue))),
      );
    for (const [one, other] of neighbours(sheet, legends, catalogue)) {
      const together = sayTogether(one.rows, other.rows, words);
      if (together === undefined || told.has(one) || told.has(other)) continue;
      told.add(one).add(other);
      if (together === "safety") yield tell(one, other);
    }
    for (const legend of legends)
      if (!told.has(legend) && speaksOfSafety(legend.rows, words)) yield tell(legend);
  },
});

/** Legends that are read in one: beside each other, and on a device one below the other. */
function neighbours(sheet: Sheet, legends: readonly Legend[], catalogue: Catalogue): [Legend, Legend][] {
  const layout = sheet.kind === "device" ? layoutOf(catalogue, sheet.layouts[0] ?? "") : undefined;
  const steps = new Set([1, layout?.columns ?? 1]);
  return legends.flatMap((one) =>
    [...steps].flatMap((step) => {
      const other = legends.find(({ face }) => Number(face) === Number(one.face) + step);
      return other === undefined ? [] : [[one, other] satisfies [Legend, Legend]];
    }),
  );
}
