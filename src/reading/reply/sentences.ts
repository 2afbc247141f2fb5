/** A program has broken lines of this length, and their sentence goes on in the next line. In characters. */
const full = 50;

/** A point behind one of these ends no sentence. */
const short =
  /(?:^|[\s(])(?:no|nos|nr|pos|qty|st|ste|mr|mrs|ms|dr|fr|sr|rev|prof|hon|attn|inc|co|corp|ltd|approx|ext|tel|fl|bldg|rm|e\.g|i\.e|vs|etc|p\.o|ref|resp|[a-z])\.$/i;

/** Lines → paragraphs. Each is a list of its sentences, as written but without line breaks. */
export function paragraphsOf(lines: readonly string[]): string[][] {
  const paragraphs: string[][] = [[]];
  let before = "";
  for (const line of lines.map((one) => one.replace(/\s+/g, " ").trim())) {
    const paragraph = paragraphs.at(-1) ?? [];
    if (line === "") paragraphs.push([]);
    else if (goesOn(before, line)) paragraph.push(`${paragraph.pop() ?? ""} ${line}`);
    else paragraph.push(line);
    before = line;
  }
  return paragraphs.filter(({ length }) => length > 0).map((runs) => runs.flatMap(sentencesIn));
}

function goesOn(before: string, line: string): boolean {
  if (before === "" || /^(?:[-*•·>]|\(?\d{1,2}[.)]\s)/u.test(line)) return false;
  return !/[.!?:]["”’)]*$/u.test(before) && (before.length >= full || /[,–-]$/u.test(before));
}

function sentencesIn(run: string): string[] {
  const sentences: string[] = [];
  let from = 0;
  for (const { index, 0: end } of run.matchAll(/[.!?…;]+["”’)]*\s+|\s[-–—|]+\s/gu)) {
    const sentence = run.slice(from, index + end.length).trim();
    const isNumber = /^\(?\d{1,2}\.\s+$/.test(sentence + end.slice(-1));
    if (/\.\s+$/.test(end) && (isNumber || short.test(run.slice(Math.max(from, index - 8), index + 1))))
      continue;
    sentences.push(sentence);
    from = index + end.length;
  }
  return [...sentences, run.slice(from).trim()].filter((sentence) => sentence !== "");
}
