import { releaseOrder } from "../intake/release.ts";
import { PackageThere, packagesIn } from "../store/package-folder.ts";
import { buyerOption, chosenOrder } from "./chosen-order.ts";
import { CannotRun, defineCommand, reasonOf } from "./command.ts";
import { beside, type Configuration, configure, settingsOption } from "./configuration.ts";
import { openBackOffice } from "./wire.ts";

export const release = defineCommand({
  name: "release",
  words: [1, 1],
  details:
    "Writes a folder with schedule, cutting list, proof, cut paths (SVG and DXF), the sheets as they came, what was\nconfirmed, and a manifest: whole or not at all, and never over one that is there. The record has who released it,\nand the buyer is told. What was released and not written is written when you repeat the command. Ends with 1, and\nsays why, when the order may not be cut.",
  options: {
    by: { type: "string", takes: "NAME", tells: "who releases it; has to be given" },
    out: {
      type: "string",
      takes: "DIR",
      tells: "where to put the folder (default: release.folder of the settings)",
    },
    ...buyerOption,
    ...settingsOption,
  },
  async run([number = ""], { by = "", out: given, buyer, settings }, { out, err }) {
    const name = by.trim();
    if (name === "") throw new CannotRun("say who releases the order: --by NAME");
    const configuration = await configure(settings);
    const folder = given ?? folderIn(configuration);
    const { desk, close } = await openBackOffice(configuration);
    try {
      const order = await chosenOrder(desk, number, buyer);
      const released = await releaseOrder(desk, number, name, packagesIn(folder), order?.buyer ?? buyer);
      if (released.ok) out(released.path);
      else err([`Order ${number} is not released:`, ...released.why.map((one) => `  ${one}`)].join("\n"));
      return released.ok ? 0 : 1;
    } catch (cause) {
      if (cause instanceof PackageThere) {
        // Packages are written once the record has the release.
        err(`Order ${number} is released; its package was not written:\n  ${cause.message}`);
        return 1;
      }
      if ((cause as Partial<NodeJS.ErrnoException>).code === undefined) throw cause;
      throw new CannotRun(`cannot write into ${folder}: ${reasonOf(cause)}`, { cause });
    } finally {
      await close();
    }
  },
});

function folderIn({ file, settings }: Configuration): string {
  if (settings.release === undefined)
    throw new CannotRun(`say where to put the package: --out DIR, or release.folder in ${file}`);
  return beside(file, settings.release.folder);
}
