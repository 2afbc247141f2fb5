import { createHash } from "node:crypto";
import { contentKey } from "../../orders/keys.ts";
import type { Sheet } from "../../trade/sheet.ts";
import type { View } from "./view.ts";

/**
 * Eight hexadecimal digits that change when anything changes that is cut or made. They begin the SHA-256 of what the
 * sheets say, in a canonical form. Names of files and people do not count.
 */
export function contentHash({ mark, gangs, plate, devices }: View): string {
  const content = {
    mark,
    gangs,
    ...(plate === undefined ? {} : { plate: made(plate) }),
    devices: [...devices].map(([position, device]) => ({ position, ...made(device) })),
  };
  return createHash("sha256").update(contentKey(content)).digest("hex").slice(0, 8);
}

function made(sheet: Sheet): object {
  const { kind, finish, lettering, legends } = sheet;
  const device = sheet.kind === "plate" ? {} : { layouts: sheet.layouts, legendPlace: sheet.legendPlace };
  return { kind, finish, lettering, legends, ...device };
}
