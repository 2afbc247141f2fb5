/** What an answer in which nothing was asked shows: our proof, or the order itself. */
const shown =
  "(?:(?:the|your|this|both|all|our) )?(?:proofs?|orders?|layouts?|legends?|everything|it|that|this|they|all)";
const right =
  "(?:approved|confirmed|agreed|good|fine|great|right|correct|perfect|ok|okay|as (?:it should be|we want it|ordered))";
const make = "(?:cut|engrave|make|release|run|produce)(?: (?:it|them|the order|all))?";

const approving = new RegExp(
  `^(?:(?:${[
    `yes|yep|yeah|ok|okay|great|perfect|correct|confirmed|approved(?: as (?:is|shown|drawn|submitted))?|agreed|fine(?: (?:by|with) (?:me|us))?|good|thanks|thank you`,
    `(?:${shown} )?(?:(?:all )?(?:looks?|is|are|'s)) (?:all )?${right}(?: (?:to (?:me|us)|as (?:is|shown|drawn)|here))?`,
    `${shown} (?:approved|confirmed|accepted|ok|okay)|(?:we|i) (?:hereby )?(?:approve|confirm|accept)(?: ${shown})?`,
    "all (?:good|correct|ok|okay)|good to go|ok(?:ay)? to (?:go|proceed|cut|engrave|make|release|run)",
    `(?:${shown} )?(?:approved|confirmed|released) for (?:engraving|production|cutting|fabrication|manufacture)`,
    `(?:please )?(?:go ahead|proceed)(?: (?:and|to) ${make}| with (?:it|the (?:order|engraving|work)|engraving|production|fabrication))?(?: when(?:ever)? you(?: are|'re) ready)?|please ${make}|(?:please )?release(?: it)?(?: to (?:engraving|production))?`,
  ].join("|")})(?:[\\s,.!;-]|[👍👌✅]\\uFE0F?)*(?:and (?=\\S))?)+$`,
  "iu",
);

/** "Yes.", "OK, go ahead", "Proof approved!": whether a line says no more than that all is as it should be. */
export function isApproval(line: string): boolean {
  return line.length < 200 && approving.test(line);
}

/**
 * The lines of a text that say no more than that. A sentence may go on in the next line: "Please go ahead and cut", "it
 * short".
 */
export function approvalsIn(text: string): string[] {
  const lines = text.split(/\r?\n/).map((line) => line.trim());
  return lines.filter((line, i) => {
    const next = lines[i + 1] ?? "";
    const goesOn = !/[.!]$/u.test(line) && /^\p{Ll}/u.test(next) && !isApproval(next);
    return isApproval(line) && !goesOn;
  });
}
