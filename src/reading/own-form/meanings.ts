import { mostButtons, mostGangs, roomOfButton } from "../../catalogue/catalogue.ts";
import type { AddressPart, Place, SheetKind } from "../../trade/place.ts";
import type { Makes } from "../choices.ts";

/** Whose address, or no address at all. */
export type Block = "bill" | "ship" | "contact";

const blocks: Readonly<Record<Block, RegExp>> = {
  ship: /\b(?:ship(?:ping|ment)?|deliver(?:y|ed)?|consignee|destination)\b/,
  bill: /\b(?:bill(?:ing|ed)?|sold to|invoice|account|acct|payer|customer)\b/,
  contact: /\b(?:contact|ordered by|your details|requested by|person)\b/,
};

/** The block that words speak of. */
export function blockIn(words: string): Block | undefined {
  if (/\bsame\b/.test(words)) return undefined;
  return (["ship", "bill", "contact"] as const).find((block) => blocks[block].test(words));
}

const parts: readonly (readonly [AddressPart, RegExp])[] = [
  ["postcode", /\b(?:zip|post ?codes?|postal|postcode)\b/],
  ["street", /\b(?:street|address|addr|road)\b/],
  ["city", /\b(?:city|town)\b/],
  ["state", /\b(?:state|province|region|st)\b/],
  ["name", /\b(?:company|firm|business|organi[sz]ation)\b/],
];

/** What words say of themselves, in the order in which it is asked: "project name" is no name. */
const said: readonly (readonly [Place, RegExp])[] = [
  ["ship.same", /\bsame\b|\b(?:ship|deliver)\b.*\b(?:bill|account|invoice)|\bdrop ship\b/],
  ["contact.email", /\b(?:email|mail)\b/],
  ["contact.phone", /\b(?:phone|telephone|tel|mobile|cell)\b/],
  ["edition", /\b(?:edition|form (?:version|revision|rev))\b/],
  [
    "part-key",
    /\b(?:part (?:key|no|number|code)|catalog(?:ue)? (?:no|number|code)|sku|item (?:no|number|code)|partkey)\b/,
  ],
  ["order", /\b(?:order|po|p o)\b(?! (?:date|by|form|type))|\borderno\b/],
  ["project", /\b(?:project|job|site)\b/],
  [
    "standing",
    /\bwhere the device\b|\b(?:alone|standing|single)\b.*\b(?:gang|plate|or)|\bstand ?alone\b|\bstanding\b/,
  ],
  ["legend-place", /\b(?:legend|text|engraving)\b.*\b(?:sits|place|placement|position|at)\b/],
  ["position", /\b(?:position|pos|opening|slot)\b|\bgang (?:no|number|#)|\bk of n\b/],
  ["gangs", /\b(?:gangs|plate size|number of gangs|gang count)\b|^gang$/],
  ["layout", /\b(?:layout|buttons|keys|configuration|config)\b/],
  [
    "lettering",
    /\b(?:letters?|lettering)\b|\b(?:text|engraving|engraved|ink|legend|font) colou?r\b|\bcolou?r of (?:the )?(?:text|letter|engraving|legend)|^text$/,
  ],
  ["finish", /\b(?:finish|colou?r)\b/],
  ["mark", /\b(?:station|mark|tag|location|room)\b/],
  ["notes", /\b(?:notes?|remarks?|comments?|instructions?|message)\b/],
];

const name = /\b(?:name|contact|attn|attention|ordered by|requested by|buyer)\b/;

/** Words that say what no place holds. */
const foreign = /\b(?:fax|date|signature|signed|quantity|qty|price|total|country|website|title)\b/;

/** What a field means, told by words; `around` is the block in which it stands. */
export function meaningOf(
  words: string,
  {
    around,
    form,
    makes,
  }: { readonly around: Block | undefined; readonly form: SheetKind; readonly makes: Makes },
): Place | undefined {
  const legend = legendIn(words, form, makes);
  if (legend !== undefined) return legend;
  if (foreign.test(words)) return undefined;
  const block = blockIn(words) ?? around;
  const own = said.find(([, says]) => says.test(words))?.[0];
  const part = parts.find(([, says]) => says.test(words))?.[0];
  // "E-mail address", "project address": the first is no address, the second is none of ours.
  if (own !== undefined && !(part !== undefined && ["order", "mark"].includes(own))) return own;
  if (part !== undefined) return `${block === "ship" ? "ship" : "bill"}.${part}`;
  if (block === "bill" || block === "ship")
    return /\bname\b|^(?:bill|ship)(?: to)?$/.test(words) ? `${block}.name` : undefined;
  return name.test(words) ? "contact.name" : undefined;
}

/** The row of a legend, or its "leave plain", told by the numbers of face and row. */
export function legendIn(words: string, form: SheetKind, makes: Makes): Place | undefined {
  const face =
    /\b(?:button|btn|key|gang|face|push|k|b|g)(?: no)? #? ?(\d{1,2})\b/.exec(words)?.[1] ??
    (form === "device" && /\b(?:plate|cover)\b/.test(words) ? "plate" : undefined);
  if (face === undefined) return undefined;
  if (!hasFace(face, form, makes)) return undefined;
  if (isPlain(words)) return `plain.${face}` as Place;
  const row = /\b(?:row|line|ln|r|l)(?: no)? #? ?(\d{1,2})\b/.exec(words)?.[1];
  if (row !== undefined) return rowAt(face, Number(row), form, makes);
  // A face may have one field for all of its rows.
  return /^(?:plate|cover|\p{L}+ (?:no )?#? ?\d+)(?: (?:text|legend|label|engraving|wording))?$/u.test(
    words,
  ) && !(face === "plate" && words === "plate")
    ? rowAt(face, 1, form, makes)
    : undefined;
}

/** Whether words ask for a face without a legend. */
export function isPlain(words: string): boolean {
  return /\b(?:plain|blank|no (?:text|legend|engraving))\b/.test(words);
}

/** A row of a face, if the catalogue has it. */
export function rowAt(face: string, row: number, form: SheetKind, makes: Makes): Place | undefined {
  if (!hasFace(face, form, makes)) return undefined;
  const rows =
    form === "plate" || face === "plate" ? makes.plate.rows : roomOfButton(Number(face), makes).rows;
  return row >= 1 && row <= rows ? (`row.${face}.${row}` as Place) : undefined;
}

function hasFace(face: string, form: SheetKind, makes: Makes): boolean {
  if (face === "plate") return form === "device";
  const most = form === "device" ? mostButtons(makes) : mostGangs(makes);
  return Number(face) >= 1 && Number(face) <= most;
}
