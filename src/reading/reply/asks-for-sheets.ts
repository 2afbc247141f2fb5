const sheets = String.raw`(?:sheets?|forms?|templates?)\b`;
const sends = String.raw`(?:send|e-?mail|forward|share|provide|attach)\b`;

/** Within one sentence: somebody asks us to send sheets, or says that he has none. */
const asking = [
  String.raw`\b(?:please|kindly|can you|could you|would you|will you)\b[^.!?]*\b${sends}(?!\s+(?:it|them|back)\b)[^.!?]*\b${sheets}`,
  String.raw`\b${sends}\s+(?:me|us)\b[^.!?]*\b${sheets}`,
  String.raw`\bwhere\s+(?:can|do|could)\s+(?:i|we)\s+(?:get|find|download)\b[^.!?]*\b${sheets}`,
  String.raw`\b(?:need|lost|have no|(?:do not|don['’]t) have|cannot find|can['’]t find)\b[^.!?]*\b(?:blank|empty|your|order|fillable|device|plate)\b[^.!?]*\b${sheets}`,
].map((pattern) => new RegExp(pattern, "i"));

/** Whether a sentence asks for sheets to fill in. Blank ones are sent then; a person reads it all the same. */
export function asksForSheets(sentence: string): boolean {
  return asking.some((pattern) => pattern.test(sentence));
}
