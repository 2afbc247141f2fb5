/** Characters that look like one on the keyboard and come in by copying: their names, and what to type instead. */
const lookalikes: Readonly<Record<string, readonly [name: string, instead: string]>> = {
  "\u2018": ["curly quotation mark", "'"],
  "\u2019": ["curly apostrophe", "'"],
  "\u201C": ["curly quotation mark", '"'],
  "\u201D": ["curly quotation mark", '"'],
  "\u2032": ["prime mark", "'"],
  "\u2033": ["double prime mark", '"'],
  "\u2010": ["printer's hyphen", "-"],
  "\u2011": ["unbreakable hyphen", "-"],
  "\u2013": ["dash", "-"],
  "\u2014": ["long dash", "-"],
  "\u2212": ["minus sign", "-"],
  "\u00D7": ["multiplication sign", "x"],
  "\u2044": ["fraction slash", "/"],
  "\u00A0": ["unbreakable blank", " "],
  "\t": ["tab", " "],
  "\n": ["line end", " "],
  "\u00DF": ["German sharp s", "ss"],
  "\u00C6": ["joined AE", "AE"],
  "\u00E6": ["joined ae", "ae"],
  "\u0152": ["joined OE", "OE"],
  "\u0153": ["joined oe", "oe"],
  "\u00D8": ["struck O", "O"],
  "\u00F8": ["struck o", "o"],
  // Letters of other alphabets that look like Latin ones.
  "\u0410": ["Cyrillic letter", "A"],
  "\u0412": ["Cyrillic letter", "B"],
  "\u0415": ["Cyrillic letter", "E"],
  "\u041A": ["Cyrillic letter", "K"],
  "\u041C": ["Cyrillic letter", "M"],
  "\u041D": ["Cyrillic letter", "H"],
  "\u041E": ["Cyrillic letter", "O"],
  "\u0420": ["Cyrillic letter", "P"],
  "\u0421": ["Cyrillic letter", "C"],
  "\u0422": ["Cyrillic letter", "T"],
  "\u0425": ["Cyrillic letter", "X"],
  "\u0405": ["Cyrillic letter", "S"],
  "\u0406": ["Cyrillic letter", "I"],
  "\u0408": ["Cyrillic letter", "J"],
  "\u0391": ["Greek letter", "A"],
  "\u0392": ["Greek letter", "B"],
  "\u0395": ["Greek letter", "E"],
  "\u0396": ["Greek letter", "Z"],
  "\u0397": ["Greek letter", "H"],
  "\u0399": ["Greek letter", "I"],
  "\u039A": ["Greek letter", "K"],
  "\u039C": ["Greek letter", "M"],
  "\u039D": ["Greek letter", "N"],
  "\u039F": ["Greek letter", "O"],
  "\u03A1": ["Greek letter", "P"],
  "\u03A4": ["Greek letter", "T"],
  "\u03A5": ["Greek letter", "Y"],
  "\u03A7": ["Greek letter", "X"],
};

/**
 * Names for kinds of characters that have no name of their own here, by their Unicode properties. The first that fits
 * is used.
 */
const kinds: readonly (readonly [RegExp, string])[] = [
  [/\p{Default_Ignorable_Code_Point}|\p{Cc}/u, "invisible character"],
  [/\p{Emoji_Presentation}/u, "picture"],
  [/\p{Script=Cyrillic}/u, "Cyrillic letter"],
  [/\p{Script=Greek}/u, "Greek letter"],
  [/\p{L}/u, "letter"],
  [/\p{N}/u, "digit"],
  [/\p{M}/u, "accent"],
  [/\p{P}/u, "punctuation mark"],
  [/\p{Z}/u, "special blank"],
];

/** The characters of a text that cannot be cut. A blank always can. A letter and its accent are one character. */
export function notCuttable(text: string, characters: string): string[] {
  const cuttable = new Set(` ${characters.normalize("NFC")}`);
  return [...new Set(text.normalize("NFC"))].filter((character) => !cuttable.has(character));
}

/** The text without the characters that nobody can see. */
export function visible(text: string): string {
  return text.replace(/\p{Default_Ignorable_Code_Point}/gu, "");
}

/** A character in words, so that the sender can find it: `“’” (curly apostrophe, U+2019)`. */
export function describe(character: string): string {
  const point = character.codePointAt(0)?.toString(16).toUpperCase().padStart(4, "0");
  const name =
    lookalikes[character]?.[0] ??
    (bare(character) === character ? undefined : `${bare(character)} with an accent`) ??
    kinds.find(([kind]) => kind.test(character))?.[1] ??
    "symbol";
  return `“${character}” (${name}, U+${point})`;
}

/**
 * The text with every character that cannot be cut replaced by the obvious other. Undefined if one has none, or if
 * nothing is left.
 */
export function retyped(text: string, characters: string): string | undefined {
  let other = text.normalize("NFC");
  for (const character of notCuttable(text, characters)) {
    const instead = candidates(character).find((some) => notCuttable(some, characters).length === 0);
    if (instead === undefined) return undefined;
    other = other.replaceAll(character, instead);
  }
  return other.trim() === "" ? undefined : other;
}

function candidates(character: string): string[] {
  if (/\p{Default_Ignorable_Code_Point}/u.test(character)) return [""];
  // Unicode's compatibility forms: full-width letters, ligatures, special blanks.
  const plain = [...character.normalize("NFKC")].map((one) => lookalikes[one]?.[1] ?? one).join("");
  return [plain, bare(character)];
}

/** A letter without its accents. */
function bare(character: string): string {
  return character
    .normalize("NFD")
    .replace(/(?<=\p{L})\p{M}+/gu, "")
    .normalize("NFC");
}
