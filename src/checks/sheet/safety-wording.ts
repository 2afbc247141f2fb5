import { hasText } from "../../trade/legend.ts";
import { at, defineSheetCheck } from "../check.ts";
import { faceWords, rowPlaces } from "../limits.ts";
import { aloneDevice, device, plate } from "../sample.ts";

/** Words of emergency lighting and of ways out, wherever they stand. From memory: NFPA 70 Article 700, NFPA 101, UL 924. */
const anywhere =
  /\b(EM|EMER|EMERG|EMERGENCY|EGRESS|LIFE SAFETY|FIRE ALARM|E-STOP|DISCONNECT|ISOLATE|ISOLATOR|POWER OFF|MAINS)\b/;
/** Words that speak of safety only where they are all that the legend says. */
const alone = /^(EXIT|EXIT LIGHTS?|SAFE|MAIN|MAIN (OFF|ON|POWER|SWITCH|BREAKER))$/;

export const safetyWording = defineSheetCheck({
  id: "safety-wording",
  title: "A legend speaks of safety",
  severity: "asks",
  source: { kind: "house" },
  why: "A button that says EMERGENCY or DISCONNECT promises something that depends on the wiring. Legends are cut as typed; the program does not know the wiring; local code and a licensed electrician decide.",
  wordings: {
    safety: {
      says: "“{typed}” on {face} speaks of safety. It is cut as typed, and this desk does not know how the button is wired.",
      fix: "Reply that a licensed electrician has seen that it agrees with local code, or change the legend.",
    },
  },
  passing: [
    { shows: "a main lobby", given: plate({}, { "1": ["MAIN LOBBY", ""] }) },
    { shows: "words that hold such letters", given: plate({}, { "1": ["EMPLOYEES", ""], "2": ["MEMBERS"] }) },
    { shows: "EXIT in a longer legend", given: device({}, { "1": ["EXIT", "SCENE"] }) },
  ],
  failing: [
    {
      shows: "emergency lighting",
      given: device({}, { "1": ["EMERG", "LIGHTS"] }),
      wording: "safety",
      says: "“EMERG LIGHTS” on button 1 speaks of safety. It is cut as typed, and this desk does not know how the button is wired.",
    },
    {
      shows: "EXIT and no more",
      given: device({}, { "1": ["EXIT", ""] }),
      wording: "safety",
      says: "“EXIT” on button 1 speaks of safety. It is cut as typed, and this desk does not know how the button is wired.",
    },
    {
      shows: "a phrase over two rows",
      given: device({}, { "1": ["POWER", "OFF"] }),
      wording: "safety",
      says: "“POWER OFF” on button 1 speaks of safety. It is cut as typed, and this desk does not know how the button is wired.",
    },
    {
      shows: "a strip that calls it a disconnect",
      given: aloneDevice({}, { plate: ["DISCONNECT"] }),
      wording: "safety",
      says: "“DISCONNECT” on the plate legend speaks of safety. It is cut as typed, and this desk does not know how the button is wired.",
    },
  ],
  *find(sheet, catalogue, say) {
    for (const legend of sheet.legends.filter((one) => !one.plain && hasText(one))) {
      const typed = legend.rows.join(" ").replace(/\s+/g, " ").trim();
      const words = typed.toUpperCase();
      if (anywhere.test(words) || alone.test(words))
        yield say(
          "safety",
          { typed, face: faceWords(sheet, legend.face) },
          at(sheet, ...rowPlaces(sheet, legend.face, catalogue)),
        );
    }
  },
});
