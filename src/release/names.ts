/** What names of files are kept to. Paths have room for them on every system, with a number and an ending behind. */
const most = 60;
const mostBytes = 120;

/**
 * What Windows reserves or forbids in a name: devices, with or without an ending; these characters and all control
 * characters; a blank or a dot at the end. Source: Microsoft, "Naming Files, Paths, and Namespaces", from memory.
 */
const devices = /^(?:con|prn|aux|nul|conin\$|conout\$|(?:com|lpt)[0-9¹²³])(?=\s*(?:\.|$))/i;
const forbidden = /[<>:"/\\|?*]|[\p{C}\p{Zl}\p{Zp}]|\p{Default_Ignorable_Code_Point}/gu;

/** What anybody typed as a name that every file system takes. Different texts may become one name. */
export function safeName(typed: string): string {
  // NFC, since some systems hold two ways to write a letter for two names, and others for one.
  const plain = typed
    .toWellFormed()
    .normalize("NFC")
    .replaceAll(forbidden, "-")
    .replaceAll(/\s+/g, " ")
    // A dot in front hides a file, a hyphen looks like an option.
    .replace(/^[\s.-]+/, "");
  const short = [...plain].slice(0, most);
  while (Buffer.byteLength(short.join("")) > mostBytes) short.pop();
  const name = short.join("").replace(/[\s.]+$/, "");
  return devices.test(name) ? `_${name}` : name || "unnamed";
}

/** A safe name for each text, all different: the second of a kind gets a number. */
export function safeNames(typed: readonly string[]): string[] {
  const taken = new Set<string>();
  return typed.map((text) => {
    const name = safeName(text);
    let numbered = name;
    for (let n = 2; taken.has(folded(numbered)); n++) numbered = `${name} (${n})`;
    taken.add(folded(numbered));
    return numbered;
  });
}

/** Names that are one name on some disk: those that differ in capitals alone, or in how letters are written. */
function folded(name: string): string {
  return name.normalize("NFKC").toUpperCase().toLowerCase().normalize("NFKC");
}
