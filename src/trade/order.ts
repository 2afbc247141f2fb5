import type { DeviceSheet, FileId, PlateSheet, Sheet } from "./sheet.ts";

/** One place on a wall: a plate and the devices in it, or one device with its own one-gang plate. */
export interface Station {
  /** As first typed; a device standing alone without a mark makes a station of its own, "". */
  readonly mark: string;
  readonly plates: readonly PlateSheet[];
  readonly devices: readonly DeviceSheet[];
  /** Sheets tied to this station only by a mark found in their notes. */
  readonly byNotes: readonly FileId[];
}

/** What one buyer orders under one order number. */
export interface Order {
  /** As first typed. */
  readonly number: string;
  readonly project?: string;
  /** Every sheet that counts, duplicates left out, in the order in which they came. */
  readonly sheets: readonly Sheet[];
  readonly stations: readonly Station[];
  /** Devices meant for a multi-gang plate that nothing ties to a station. */
  readonly loose: readonly DeviceSheet[];
  /** Sheets whose content stands again in another file; only the first counts. */
  readonly twice: readonly { readonly kept: Sheet; readonly again: Sheet }[];
}

/** A sheet that an order still lacks. */
export interface Missing {
  readonly station: string;
  readonly kind: "device" | "plate";
  /** Which opening, for a device. */
  readonly position?: number;
}
