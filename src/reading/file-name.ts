/**
 * Longest file name kept. In characters: what an old mail program shows. In bytes of UTF-8: what every disk takes
 * with a word before it and a number behind.
 */
const most = 120;
const mostBytes = 200;

/** So many folders of a name are kept, the innermost. */
const deepest = 4;

/**
 * A file name as a letter gives it → a name that is safe to print and to write to disk. It has no folders, no control
 * characters and no marks that reverse the direction of reading. Undefined when nothing is left.
 */
export function safeFileName(given: string): string | undefined {
  const last = given.toWellFormed().split(/[/\\]/).at(-1) ?? "";
  const name = last.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, "").trim();
  if (/^\.*$/.test(name)) return undefined;
  const { stem, ending } = parts(name);
  const characters = [...stem].slice(0, most - [...ending].length);
  while (Buffer.byteLength(characters.join("") + ending) > mostBytes) characters.pop();
  return characters.join("") + ending;
}

/** The folders in a file's name, each safe to print; undefined where there are none. */
export function foldersOf(given: string): string | undefined {
  const folders = given.split(/[/\\]/).slice(0, -1);
  const safe = folders.slice(-deepest).flatMap((folder) => safeFileName(folder) ?? []);
  return safe.length === 0 ? undefined : safe.join("/");
}

/**
 * Tells files of one name apart: the second "sheet.pdf" becomes "sheet (2).pdf", and `named` is the name it came
 * with. Names that differ only in capitals are one name on many disks.
 */
export function tellApart<T extends { readonly file: string }>(
  files: readonly T[],
): (T & { named?: string })[] {
  const taken = new Set(files.map(({ file }) => file.toLowerCase()));
  /** The next number for a name; every number below it is taken. */
  const next = new Map<string, number>();
  return files.map((one) => {
    const { file } = one;
    const key = file.toLowerCase();
    let n = next.get(key);
    if (n === undefined) {
      next.set(key, 2);
      return one;
    }
    const { stem, ending } = parts(file);
    const numbered = (): string => `${stem} (${n})${ending}`;
    while (taken.has(numbered().toLowerCase())) n++;
    next.set(key, n + 1);
    taken.add(numbered().toLowerCase());
    return { ...one, file: numbered(), named: file };
  });
}

function parts(name: string): { stem: string; ending: string } {
  const ending = /(?<=.)\.[^.\s]{1,10}$/su.exec(name)?.[0] ?? "";
  return { stem: name.slice(0, name.length - ending.length), ending };
}
