import { existsSync, lstatSync, mkdirSync } from "node:fs";
import { enableCompileCache } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";

/**
 * Has Node.js keep what it makes of the program's files, so that the next start need not compile them again. What is
 * kept is run without being looked at. So it lies in a folder of the user's own, which nobody else may read or write, or
 * nowhere. Readers of what strangers send have no part in it.
 */
export function keepCompiled(): void {
  const user = process.getuid?.();
  // XDG Base Directory Specification: caches of a user lie there.
  const home = process.env["XDG_CACHE_HOME"] || undefined;
  if (user === undefined) return;
  const folder = home === undefined ? join(tmpdir(), `burin-${user}`) : join(home, "burin");
  try {
    if (!existsSync(folder)) mkdirSync(folder, { mode: 0o700 });
    const { uid, mode } = lstatSync(folder);
    const isOwn = uid === user && (mode & 0o170_077) === 0o040_000;
    if (isOwn) enableCompileCache(folder);
  } catch {
    // Without it the program only starts more slowly.
  }
}
