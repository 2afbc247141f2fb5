import { backUp } from "../store/backup.ts";
import { CannotRun, defineCommand, reasonOf } from "./command.ts";
import { configure, settingsOption } from "./configuration.ts";
import { blobsOf, recordFolder } from "./record.ts";

export const backup = defineCommand({
  name: "backup",
  words: [1, 1],
  details:
    "FILE is a database of SQLite with the letters, answers and files in it; it must not be there yet. It is written\nwhole or not at all. `burin restore FILE` makes a record of it. It holds all that the record holds: keep it as safe.",
  options: settingsOption,
  async run([file = ""], { settings }, { out, progress }) {
    const configuration = await configure(settings);
    const folder = recordFolder(configuration);
    const blobs = await blobsOf(configuration);
    try {
      const tell = (share: number): void => progress(`Taking bytes: ${Math.round(share * 100)} %`);
      const made = await backUp(folder, file, tell, blobs);
      progress("");
      out(`${file}: ${made.letters} letters, ${made.events} events, ${made.blobs} files by their bytes.`);
      return 0;
    } catch (cause) {
      progress("");
      throw new CannotRun(`cannot back up ${folder} into ${file}: ${reasonOf(cause)}`, { cause });
    }
  },
});
