/** "Yes.", "OK, go ahead", "Approved!": whether a line says no more than that all is as it should be. */
export function isApproval(line: string): boolean {
  return (
    line.length < 200 &&
    /^(?:(?:yes|yep|yeah|ok|okay|great|perfect|correct|confirmed|approved|agreed|fine|good|(?:it |that |this |all |everything )?(?:looks|is|'s) (?:good|fine|great|right|correct|perfect|ok|okay)|all (?:good|correct|ok|okay)|good to go|(?:please )?(?:go ahead|proceed|release(?: it)?)|thanks|thank you)[\s,.!;-]*)+$/i.test(
      line,
    )
  );
}
