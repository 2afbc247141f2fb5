import { expect } from "vitest";

/** What somebody could put into any field, subject, name or file name. */
export const hostileValues = {
  html: `<img src=x onerror=alert(1)>`,
  script: `</pre><script>alert(1)</script>`,
  svg: `<svg onload=alert(1)>`,
  quote: `"' onfocus=alert(1) autofocus x="`,
  override: `S-1\u202Efdp.exe`,
  isolate: `\u2067S-1\u2066`,
  formula: `=HYPERLINK("http://elsewhere.example")`,
  plus: "+ON",
  at: "@SUM",
  minus: "-OFF",
  tab: "\t=1+1",
  return: "\r=1+1",
  command: "$(touch owned) `touch owned`'; touch owned",
  header: "S-1\r\nBcc: everybody@elsewhere.example\r\n\r\n<b>more</b>",
  climbing: "../../../etc/passwd",
  backwards: "..\\..\\windows\\system.ini",
  terminal: "S-1\u001b]0;owned\u0007\u001b[2J\u009b2J",
} as const;

/** Signs that turn the direction of the words behind them. Unicode Standard Annex #9, 2.1 to 2.3 */
const turning = /[\u202A-\u202E\u2066-\u2069]/;

/** Tags that no page of ours has but by somebody else's hand. */
const foreign = /<img src=x|<script(?! src="" defer>)|<svg onload|<b>more|<[a-z][^<>]*\son[a-z]+=/i;

/** What must hold of a text of each kind, whatever a stranger has put into it. */
export const safe = {
  /** What stands between quotes is no tag; a quote of a stranger's is no quote. */
  html(page: string, where: string): void {
    expect(page.replaceAll(/"[^"]*"/g, '""'), where).not.toMatch(foreign);
    expect(page, where).not.toMatch(turning);
  },
  text(text: string, where: string): void {
    expect(text, where).not.toMatch(turning);
    expect(text, where).not.toMatch(/[^\P{Cc}\n\r\t]/u);
  },
  /** The head of a letter: fields that we write, each on lines of its own. RFC 5322, 2.2 */
  head(head: string, where: string): void {
    const names = [...head.matchAll(/^([^\s:]+):/gm)].map(([, name = ""]) => name.toLowerCase());
    expect(names.length, where).toBeGreaterThan(5);
    expect(
      names.filter((name) => !ours.has(name)),
      where,
    ).toEqual([]);
    expect(head, where).not.toMatch(/[^\P{Cc}\n\r\t]/u);
  },
  /** No cell begins as a formula does. OWASP, CSV Injection */
  csv(csv: string, where: string): void {
    const cells = [...csv.replace(/^\uFEFF/, "").matchAll(/("(?:[^"]|"")*"|[^",\r\n]*)(?:,|\r\n)/g)];
    expect(cells.length, where).toBeGreaterThan(1);
    for (const [, cell = ""] of cells)
      expect(cell.replace(/^"/, ""), where).not.toMatch(/^\s*[=+\-@\t\r＝＋－＠](?![\d.]+$)/u);
  },
  json(json: string, where: string): void {
    expect(() => JSON.parse(json) as unknown, where).not.toThrow();
  },
  /** What a mail program offers to save a file as. */
  name(name: string, where: string): void {
    expect(name, where).not.toMatch(/^\.|[/\\\p{Cc}\p{Cf}]/u);
  },
  path(path: string, where: string): void {
    expect(path, where).not.toMatch(/(?:^|\/)\.|[\\:*?"<>|\p{Cc}\p{Cf}]|^\/|\/{2}/u);
  },
} as const;

/** Header fields of our letters. */
const ours = new Set([
  "auto-submitted",
  "x-auto-response-suppress",
  "x-burin",
  "from",
  "to",
  "reply-to",
  "in-reply-to",
  "references",
  "subject",
  "message-id",
  "date",
  "mime-version",
  "content-type",
]);
