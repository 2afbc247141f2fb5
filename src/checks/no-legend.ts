/** Words that stand for a legend and are never one. */
const never = new Set(
  (
    "NONE|N/A|NA|N.A.|NIL|TBD|T.B.D.|TBA|TBC|DITTO|SAME|AS BEFORE|AS PREVIOUS|TO FOLLOW|TO BE DETERMINED|ON FILE|" +
    "NO TEXT|NO LEGEND|NO ENGRAVING|LEAVE BLANK|LEAVE PLAIN|LEGEND HERE|TEXT HERE|YOUR TEXT"
  ).split("|"),
);
/** Where a reader is sent instead: SEE DWG, PER PLAN, SAME AS S-103. Not SEE & DO nor AS IS. */
const elsewhere =
  "ABOVE|BELOW|BACK|NOTES?|ATTACHED|DWGS?|DRAWINGS?|PLANS?|SCHED(ULE)?S?|SPECS?|SHEETS?|SHT|SKETCH|DETAILS?|E-?MAIL|LETTER|PO|RFI|ARCH(ITECT)?|OWNER|ENGR?|ENGINEER|PAGE|PG|SHOWN|NOTED";
/** XXXX, BUTTON 1, LEGEND 2, quantities, and marks such as -- or ditto marks. */
const neverLike = [
  new RegExp(`^(SEE|PER|AS( PER)?|REFER TO|REF) (THE )?(${elsewhere})( #?[A-Z]{0,2}-?[0-9.]{1,5})?$`),
  /^(SAME|LIKE) AS\b/,
  /^T\.?B\.?[ACD]\.?\W+(BY|PER|W\/|WITH|LATER|PENDING)\b/,
  /^TO BE (ADVISED|ANNOUNCED|CONFIRMED|DECIDED|DETERMINED|NAMED)( (BY|LATER|PER|WITH)\b.*)?$/,
  /^(QTY|QUANTITY)\W*\d{0,3}$/,
  /^TYP(ICAL)?\.?( (OF|X) ?\d{1,3}| EACH| ALL)?$/,
  /^\d{1,3} ?(EA|EACH|PCS?)\.?$/,
  /^X{3,}$/,
  /^(BUTTON|BTN|GANG|LEGEND)( ?#?\d+)?$/,
  /^(["'“”’′]+|-{2,}|[–—]+|\.+|\?{2,}|_+)$/,
];
/** Whether a legend or a row of it stands for something else, and is never cut. */
export function isNever(text: string): boolean {
  // "(TBD)" is no more of a legend than TBD, nor "SEE (DWG)" than SEE DWG.
  const plain = plainly(plainly(text).replaceAll(/[()[\]]/g, " "));
  return never.has(plain) || neverLike.some((pattern) => pattern.test(plain));
}

/** A text in capitals, with single blanks. */
export function plainly(text: string): string {
  return text.normalize("NFKC").trim().replace(/\s+/g, " ").toUpperCase();
}
