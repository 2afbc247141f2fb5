/** Longer lines are sentences. In characters. */
const longestLine = 160;

const please =
  "(?:please|pls|plz|kindly|thanks|thank you|many thanks|thx|sorry|hi|hello|hi all|hi there|good (?:morning|afternoon|day)|bitte|danke|guten tag|hallo|bonjour|merci|svp|s'il vous plaît|por favor|gracias|hola)";
const english =
  "(?:(?:(?:we|i) (?:hereby |now )?|(?:we|i)(?:'d| would) like to |(?:we|i) (?:want|wish|need|have) to |this is to )?(?:cancel|withdraw)|cancellation(?: of)?|withdrawal(?: of)?)";
const german =
  "(?:(?:hiermit )?stornieren(?: sie)?|wir stornieren|ich storniere|hiermit (?:storniere ich|stornieren wir)|storno|stornierung)";
const french = "(?:(?:veuillez |d')annuler|annuler|annulez|nous annulons|j'annule)";
const spanish =
  "(?:(?:favor de )?(?:cancelar|anular)|cancel[ae]n?|an[uú]l[ae]n?|cancelamos|anulamos|cancelo|anulo)";
const cancel = `(?:${english}|${german}|${french}|${spanish})`;

/** "CANCEL S-104", "Bitte S-104 stornieren", "S-104 is withdrawn". A colon could begin a legend: "S-104: CANCEL". */
const forms = [
  new RegExp(`^${cancel} ?[:–—-]? (?<what>.+)$`, "iu"),
  /(?<what>.+) (?:bitte )?stornieren$/iu,
  /(?<what>.+) (?:is|are) (?:hereby )?(?:cancelled|canceled|withdrawn)$/iu,
];
const around = [
  new RegExp(`^(?:${please}[\\s,.:!]+)+`, "iu"),
  new RegExp(`(?:[\\s,.!]+${please})+$`, "iu"),
] as const;

/** A text without any of these stems cancels nothing. */
const stems = /cancel|withdraw|storn|annul|an[uú]l/iu;

/** Whether some line of a text may cancel something. It takes no time. */
export function mayCancel(text: string): boolean {
  return stems.test(text.replace(/\p{Cf}/gu, "").normalize("NFKC"));
}

/**
 * What a line cancels, as it is written: "order BW-2207" of "Please cancel order BW-2207." Undefined if the line says
 * or asks anything else.
 */
export function cancelledIn(line: string): string | undefined {
  if (line.length > longestLine || line.includes("?")) return undefined;
  const words = line
    // Before the next step, which makes a blank and an accent of ´.
    .replace(/[’`´]/gu, "'")
    .normalize("NFKC")
    .replace(/\*+/gu, " ")
    .replace(/\s+/gu, " ")
    .trim()
    .replace(/^[-•·–] /u, "")
    .replace(around[0], "")
    .replace(/[\s.!]+$/u, "")
    .replace(around[1], "")
    .replace(/[\s.,!]+$/u, "");
  for (const form of forms) {
    const what = form.exec(words)?.groups?.["what"];
    if (what !== undefined) return what;
  }
  return undefined;
}
