import { plainText } from "../../orders/keys.ts";
import { isMarked } from "../../orders/placed.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { at, defineSheetCheck, labelOf } from "../check.ts";
import { device, plate } from "../sample.ts";

export const fileNameContradicts = defineSheetCheck({
  id: "file-name-contradicts",
  title: "The file's name says another place than the sheet",
  severity: "asks",
  source: { kind: "house" },
  why: "Whoever saves a sheet as “pos 1” means position 1. A sheet copied for the next place and not changed everywhere ends in the wrong opening.",
  wordings: {
    position: {
      says: "The file is called {file}, but “{field}” says {position}.",
      fix: "Confirm that {position} is right, or send the sheet again with the right position.",
    },
    mark: {
      says: "The file is called {file}, but “{field}” says {mark}.",
      fix: "Confirm that {mark} is right, or send the sheet again with the right station mark.",
    },
  },
  passing: [
    { shows: "the same position in both", given: device({ file: "S-104_pos_2 of 4 rev 1.pdf" }) },
    { shows: "several positions in the name", given: device({ file: "S-104 pos 1-4.pdf" }) },
    { shows: "a number that counts files", given: device({ file: "device sheet (3).pdf" }) },
    { shows: "the mark written otherwise", given: plate({ file: "2207 s104 plate.pdf" }) },
    { shows: "a neighbour beside the own mark", given: plate({ file: "S-104 like S-110.pdf" }) },
    { shows: "a number of another length", given: plate({ file: "S-2207.pdf" }) },
  ],
  failing: [
    { shows: "another position", given: device({ file: "S-104 pos 1.pdf" }), wording: "position" },
    {
      shows: "another position, at length",
      given: device({ file: "left_position-01.pdf" }),
      wording: "position",
    },
    { shows: "another station", given: plate({ file: "S-105 plate.pdf" }), wording: "mark" },
  ],
  *find(sheet, _catalogue, say) {
    // Of two files of one name the name that they came with counts.
    const file = sheet.named ?? sheet.file;
    const named = positionIn(file);
    if (
      sheet.kind === "device" &&
      named !== undefined &&
      sheet.position !== undefined &&
      named !== sheet.position
    )
      yield say(
        "position",
        { file, field: labelOf(sheet, "position"), position: sheet.position },
        at(sheet, "position"),
      );
    else if (isMarked(sheet) && namesOtherMark(file, sheet.mark, sheet))
      yield say("mark", { file, field: labelOf(sheet, "mark"), mark: sheet.mark }, at(sheet, "mark"));
  },
});

/** The one position that a file's name tells: "S-104 pos 2 of 4.pdf"; none in "pos 1-4.pdf". */
function positionIn(file: string): number | undefined {
  const found = [
    ...file.matchAll(
      /(?<![\p{L}\p{N}])pos(?:ition|n)?[\s._#-]*0?(\d)(?!\d|\s*[,&+-]\s*\d|\s*(?:to|and)\b)/giu,
    ),
  ];
  return found.length === 1 ? Number(found[0]?.[1]) : undefined;
}

/**
 * Whether a file's name tells another station of the same series: S-105 where the sheet says S-104. Only where nothing in
 * the name is the sheet's own mark, and the numbers are of one length, of two digits or more.
 */
function namesOtherMark(file: string, mark: string, { order = "", partKey = "" }: Sheet): boolean {
  const [, letters = "", digits = ""] = /^([A-Z]{1,4})[-_ ]?(\d{2,5})$/i.exec(mark.trim()) ?? [];
  const stem = file.replace(/\.[a-z]{2,4}$/i, "");
  if (letters === "" || plainText(stem).includes(plainText(mark))) return false;
  const like = new RegExp(
    `(?<![\\p{L}\\p{N}])${letters}[-_ ]?(\\d{${digits.length}})(?![\\p{L}\\p{N}])`,
    "giu",
  );
  const others = new Set(
    [...stem.replaceAll("_", " ").matchAll(like)]
      .map(([whole]) => plainText(whole))
      .filter((other) => !plainText(order + partKey).includes(other)),
  );
  return others.size === 1;
}
