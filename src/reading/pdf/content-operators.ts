/**
 * An operand of a page's content: a number, a name with its slash, or a string with its opening parenthesis, one
 * character a byte. The members of arrays and dictionaries are operands like any other.
 */
export type Operand = number | string;

export interface Operator {
  readonly name: string;
  readonly operands: readonly Operand[];
}

// ISO 32000-1:2008 §7.2.2, §7.3: white space and comments, then brackets of arrays and dictionaries, then what
// counts. Parentheses nest in strings, so the end of a string is looked for by hand.
const token =
  /[\0\t\n\f\r ]+|%[^\r\n]*|<<|>>|[[\]{})]|<([0-9A-Fa-f\0\t\n\f\r ]*)>|(\/[^\0\t\n\f\r ()<>[\]{}/%]*)|([+-]?(?:\d+\.?\d*|\.\d+))(?=[\0\t\n\f\r ()<>[\]{}/%]|$)|([^\0\t\n\f\r ()<>[\]{}/%]+)/y;

/**
 * The operators of a content stream, one character a byte, in their order. Nonsense is skipped, as viewers skip it.
 */
export function* operatorsIn(content: string): Generator<Operator> {
  let operands: Operand[] = [];
  let at = 0;
  while (at < content.length) {
    if (content[at] === "(") {
      const end = endOfString(content, at);
      operands.push(`(${unescaped(content.slice(at + 1, end))}`);
      at = end + 1;
      continue;
    }
    token.lastIndex = at;
    const [all, hex, name, number, word] = token.exec(content) ?? [content[at] ?? ""];
    at += all.length;
    if (hex !== undefined) operands.push(`(${fromHex(hex)}`);
    else if (name !== undefined) operands.push(name);
    else if (number !== undefined) operands.push(Number(number));
    else if (word === "true" || word === "false" || word === "null") operands.push(word);
    else if (word !== undefined) {
      // §8.9.7: the bytes of an inline image stand after ID and one blank, and before EI.
      if (word === "ID") at = endOfImage(content, at + 1);
      yield { name: word, operands };
      operands = [];
    }
  }
}

function endOfString(content: string, start: number): number {
  let open = 0;
  for (let i = start; i < content.length; i++) {
    const character = content[i];
    if (character === "\\") i++;
    else if (character === "(") open++;
    else if (character === ")" && --open === 0) return i;
  }
  return content.length;
}

const endsImage = /[\0\t\n\f\r ]EI(?=[\0\t\n\f\r ]|$)/g;

function endOfImage(content: string, start: number): number {
  endsImage.lastIndex = start;
  return endsImage.exec(content)?.index ?? content.length;
}

// §7.3.4.2
const escapes: Readonly<Record<string, string>> = { n: "\n", r: "\r", t: "\t", b: "\b", f: "\f" };

function unescaped(text: string): string {
  return text.replace(/\\(?:([0-7]{1,3})|(\r\n|[\s\S]))/g, (_, octal?: string, one = "") => {
    if (octal !== undefined) return String.fromCharCode(Number.parseInt(octal, 8) & 0xff);
    return /[\r\n]/.test(one) ? "" : (escapes[one] ?? one);
  });
}

function fromHex(hex: string): string {
  const digits = hex.replace(/[^0-9A-Fa-f]/g, "");
  // §7.3.4.3: a missing last digit is 0.
  return Buffer.from(digits.length % 2 === 0 ? digits : `${digits}0`, "hex").toString("latin1");
}
