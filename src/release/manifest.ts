import { createHash } from "node:crypto";
import type { PackageFile, Release } from "./release.ts";

/** Everything that the package has but the manifest itself: what each file is, how large, and its SHA-256 (FIPS 180-4). */
export function manifestOf(
  { order, catalogue, revision, by, at }: Release,
  files: readonly PackageFile[],
): object {
  return {
    order: order.number,
    project: order.project,
    revision,
    maker: catalogue.maker.name,
    releasedBy: by,
    releasedAt: at.toISOString(),
    files: files.map(({ path, is, bytes }) => ({
      path,
      is,
      size: bytes.length,
      sha256: createHash("sha256").update(bytes).digest("hex"),
    })),
  };
}
