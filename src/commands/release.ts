import { prepareRelease } from "../intake/release.ts";
import { PackageThere, writePackage } from "../store/package-folder.ts";
import { CannotRun, defineCommand, reasonOf } from "./command.ts";
import { beside, type Configuration, configure, settingsOption } from "./configuration.ts";
import { readRecord, systemClock } from "./wire.ts";

export const release = defineCommand({
  name: "release",
  takes: "NUMBER",
  words: [1, 1],
  summary: "Hands an order that has passed to the engraving room.",
  details:
    "Writes a folder with schedule, cutting list, proof, cut paths (SVG and DXF), the sheets as they came, what was\nconfirmed, and a manifest: whole or not at all, and never over one that is there. Ends with 1, and says why, when\nthe order may not be cut.",
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
    const store = await readRecord(configuration);
    const desk = { store, catalogue: configuration.catalogue, clock: systemClock };
    const packed = await prepareRelease(number, name, desk);
    await store.close();
    if (!packed.ok) {
      err([`Order ${number} is not released:`, ...packed.why.map((why) => `  ${why}`)].join("\n"));
      return 1;
    }
    try {
      out(await writePackage(folder, packed.name, packed.files));
      return 0;
    } catch (cause) {
      if (!(cause instanceof PackageThere))
        throw new CannotRun(`cannot write into ${folder}: ${reasonOf(cause)}`, { cause });
      err(`Order ${number} is not released:\n  ${cause.message}`);
      return 1;
    }
  },
});

function folderIn({ file, settings }: Configuration): string {
  if (settings.release === undefined)
    throw new CannotRun(`say where to put the package: --out DIR, or release.folder in ${file}`);
  return beside(file, settings.release.folder);
}
