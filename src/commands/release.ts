import { randomUUID } from "node:crypto";
import { dateIn } from "../calendar/dates.ts";
import { takeNote } from "../intake/check-note.ts";
import { prepareRelease } from "../intake/release.ts";
import { isAsReleased } from "../orders/piece.ts";
import type { Packed } from "../release/release.ts";
import { PackageThere, writePackage } from "../store/package-folder.ts";
import { CannotRun, defineCommand, reasonOf } from "./command.ts";
import { beside, type Configuration, configure, settingsOption } from "./configuration.ts";
import { openBackOffice } from "./wire.ts";

export const release = defineCommand({
  name: "release",
  takes: "NUMBER",
  words: [1, 1],
  summary: "Hands an order that has passed to the engraving room.",
  details:
    "Writes a folder with schedule, cutting list, proof, cut paths (SVG and DXF), the sheets as they came, what was\nconfirmed, and a manifest: whole or not at all, and never over one that is there. The record has who released it,\nand the buyer is told. What was released and not written is written when you repeat the command. Ends with 1, and\nsays why, when the order may not be cut.",
  options: {
    by: { type: "string", takes: "NAME", tells: "who releases it; has to be given" },
    out: {
      type: "string",
      takes: "DIR",
      tells: "where to put the folder (default: release.folder of the settings)",
    },
    ...settingsOption,
  },
  async run([number = ""], { by = "", out: given, settings }, { out, err }) {
    const name = by.trim();
    if (name === "") throw new CannotRun("say who releases the order: --by NAME");
    const configuration = await configure(settings);
    const folder = given ?? folderIn(configuration);
    const { desk, close } = await openBackOffice(configuration);
    try {
      const [order] = await desk.store.orders.named(number);
      const before = order?.released;
      // What was released and not written, since the program ended in between, is written now.
      const isReleased = before !== undefined && isAsReleased(order?.sheets ?? [], before);
      const asked = isReleased
        ? { by: before.by, at: new Date(before.at), revision: before.revision }
        : { by: name, before };
      const packed = await prepareRelease(number, asked, desk);
      if (!packed.ok) return refuse(packed.why);
      if (isReleased) return await put(folder, packed, out, refuse);
      const day = dateIn(desk.clock.now(), desk.timeZone);
      const taken = await takeNote(desk, {
        id: randomUUID(),
        buyer: order?.buyer ?? "",
        order: order?.number ?? number,
        by: name,
        why: "released",
        acts: [{ kind: "release", on: day }],
      });
      if (taken.kind === "wrong") return refuse([taken.why]);
      const letter = await desk.store.letters.read(taken.letter);
      if (taken.kind === "waits" || letter.state === "held")
        return refuse([letter.why ?? "letters about it are being judged; try again in a moment"]);
      const [released] = await desk.store.orders.named(number);
      const at = new Date(released?.released?.at ?? desk.clock.now());
      const last = await prepareRelease(number, { by: name, at, before }, desk);
      if (!last.ok) return refuse(last.why);
      return await put(folder, last, out, refuse);
    } finally {
      await close();
    }

    function refuse(why: readonly string[]): number {
      err([`Order ${number} is not released:`, ...why.map((one) => `  ${one}`)].join("\n"));
      return 1;
    }
  },
});

async function put(
  folder: string,
  { name, files }: Extract<Packed, { readonly ok: true }>,
  out: (text: string) => void,
  refuse: (why: readonly string[]) => number,
): Promise<number> {
  try {
    out(await writePackage(folder, name, files));
    return 0;
  } catch (cause) {
    if (!(cause instanceof PackageThere))
      throw new CannotRun(`cannot write into ${folder}: ${reasonOf(cause)}`, { cause });
    return refuse([cause.message]);
  }
}

function folderIn({ file, settings }: Configuration): string {
  if (settings.release === undefined)
    throw new CannotRun(`say where to put the package: --out DIR, or release.folder in ${file}`);
  return beside(file, settings.release.folder);
}
