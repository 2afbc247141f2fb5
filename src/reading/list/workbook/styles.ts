import { isOn, readXml } from "./xml.ts";

/** How a cell looks, as far as it may mislead. */
export interface Look {
  /** The code of its format: "General", "@", "d-mmm". */
  readonly format: string;
  readonly struck: boolean;
  /** Its text has the colour of what lies behind it, or is smaller than anybody reads. */
  readonly unseen: boolean;
}

export const plainLook: Look = { format: "General", struck: false, unseen: false };

/** ECMA-376-1 §18.8.30: formats that show a number or a text as it is. Every other number of that list is a format. */
const builtIn: Readonly<Record<string, string>> = { "0": "General", "1": "0", "49": "@" };

interface Font {
  struck: boolean;
  tiny: boolean;
  colour: string;
}

/** Every look of a workbook, by its number in the list of formats of cells. ECMA-376-1 §18.8 */
export function looksIn(xml: string): Look[] {
  const formats = new Map<string, string>();
  const fonts: Font[] = [];
  const fills: string[] = [];
  const looks: Look[] = [];
  const path: string[] = [];
  readXml(xml, {
    open: (name, attributes) => {
      // A part of the list of fonts, of grounds or of looks. Those of conditional formats stand in a list of their own.
      const [, list] = path;
      const isPart = path.length === 2;
      path.push(name);
      const [font] = fonts.slice(-1);
      if (name === "numFmt") formats.set(attributes["numFmtId"] ?? "", attributes["formatCode"] ?? "");
      else if (isPart && list === "fonts") fonts.push({ struck: false, tiny: false, colour: "" });
      else if (isPart && list === "fills") fills.push("");
      else if (isPart && list === "cellXfs") {
        const id = attributes["numFmtId"] ?? "0";
        const { struck = false, tiny = false, colour = "" } = fonts[Number(attributes["fontId"] ?? 0)] ?? {};
        const ground = fills[Number(attributes["fillId"] ?? 0)] ?? "";
        looks.push({
          format: formats.get(id) ?? builtIn[id] ?? `format ${id}`,
          struck,
          unseen: tiny || (ground === "" ? white.has(colour) : colour === ground),
        });
      } else if (list === "fonts" && font !== undefined) {
        if (name === "strike") font.struck = isOn(attributes["val"] ?? "1");
        else if (name === "sz") font.tiny = Number(attributes["val"]) < leastSize;
        else if (name === "color") font.colour = colourOf(attributes);
      } else if (list === "fills") {
        if (attributes["patternType"] === "solid") fills[fills.length - 1] = "solid";
        else if (name === "fgColor" && fills.at(-1) === "solid")
          fills[fills.length - 1] = colourOf(attributes);
      }
    },
    close: () => path.pop(),
  });
  return looks;
}

/** Points. */
const leastSize = 4;

/** ECMA-376-1 §18.8.3 and §18.8.27: the first colour of a theme and the indexes 1 and 9 are white. */
const white = new Set(["rgb FFFFFF", "theme 0", "indexed 1", "indexed 9"]);

function colourOf({ rgb, theme, indexed, tint = "0" }: Readonly<Record<string, string>>): string {
  if (rgb !== undefined) return `rgb ${rgb.slice(-6).toUpperCase()}`;
  if (theme !== undefined) return Number(tint) === 0 ? `theme ${theme}` : `theme ${theme} ${tint}`;
  return indexed === undefined ? "" : `indexed ${indexed}`;
}
