import { restore as makeRecord } from "../store/backup.ts";
import { CannotRun, defineCommand, reasonOf } from "./command.ts";
import { configure, settingsOption } from "./configuration.ts";
import { blobsOf, openRecord, recordFolder } from "./record.ts";
import { systemClock } from "./system-clock.ts";

export const restore = defineCommand({
  name: "restore",
  words: [1, 1],
  details:
    "The record goes where the settings say, and nothing may be there. All bytes are recounted by their hashes, and the\nchain of events too, before it is used. A backup of an older version is brought up to date. Whoever was signed in has\nto sign in again.",
  options: settingsOption,
  async run([file = ""], { settings }, { out, err, progress }) {
    const configuration = await configure(settings);
    const folder = recordFolder(configuration);
    const blobs = await blobsOf(configuration);
    const tell = (share: number, does: "recounts" | "puts"): void =>
      progress(`${does === "recounts" ? "Recounting" : "Putting"} bytes: ${Math.round(share * 100)} %`);
    const made = await makeRecord(file, folder, tell, blobs)
      .catch((cause: unknown) => {
        throw new CannotRun(`cannot make a record of ${file}: ${reasonOf(cause)}`, { cause });
      })
      .finally(() => progress(""));
    out(`${folder}: ${made.letters} letters, ${made.events} events, ${made.blobs} files by their bytes.`);
    // One of an older version is brought up to date, as the worker would do.
    const store = await openRecord(configuration, systemClock);
    const { broken } = await store.verify();
    await store.close();
    if (broken === undefined) return 0;
    err(
      `The chain of events breaks at event ${broken}: somebody has changed the record before it was backed up.`,
    );
    return 2;
  },
});
