import { open } from "node:fs/promises";

/** Names in a folder last only when the folder itself was written. */
export async function makeDurable(folder: string): Promise<void> {
  const handle = await open(folder, "r");
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
