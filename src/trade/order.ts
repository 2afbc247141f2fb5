import type { DeviceSheet, FileId, PlateSheet, Sheet } from "./sheet.ts";

/** One place on a wall: a plate and the devices in it, or one device with its own one-gang plate. */
export interface Station {
  /** As first typed. A device that stands alone without a mark is a station of its own, with the mark "". */
  readonly mark: string;
  readonly plates: readonly PlateSheet[];
  readonly devices: readonly DeviceSheet[];
  /** Sheets tied to this station only by a mark found in their notes. */
  readonly byNotes: readonly FileId[];
}

/**
 * Two sheets of different letters that contradict each other. Until somebody says which one is meant, the first is
 * kept aside: it is asked about and not cut.
 */
export interface Aside {
  readonly sheet: Sheet;
  readonly beside: Sheet;
  readonly why: /** Both are for one place, and it is not clear which is the newer: dates and arrival disagree. */
    | "dates"
    /** Both are for one place, and stand in two letters that were forwarded as one. This is of the older. */
    | "forwarded"
    /** A device beyond the gangs that a newer sheet gives its plate. */
    | "beyond"
    /** A device that stands alone, at a station to which newer sheets give a multi-gang plate. */
    | "alone"
    /** A device of a plate that never came, at a station where a newer sheet has a device that stands alone. */
    | "in-plate"
    /** A stopped sheet that may have come again, with more changed than had to be mended. */
    | "again";
}

/** An earlier sheet whose place a newer one has taken. */
export interface Replacement {
  readonly old: Sheet;
  readonly now: Sheet;
  /** They are for the same place, or the newer one only mends what stopped the old one, which may be its place. */
  readonly how: "place" | "mended";
}

/** A sheet of a letter on which nothing of its own is filled in, and the one for the same place that is. */
export interface Untouched {
  readonly blank: Sheet;
  readonly beside: Sheet;
}

/** A sheet that came after its place was cancelled, in a letter of an earlier date than the one that cancels it. */
export interface Crossed {
  readonly sheet: Sheet;
  readonly cancelledBy: number;
  /** It is newer, and the same sheet once more, among others. */
  readonly again?: true;
}

/** A sheet that one of our own people has put elsewhere: as it stood, and its copy with the place that it has now. */
export interface Move {
  readonly old: Sheet;
  readonly now: Sheet;
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
  /** Sheets whose content also stands in another file. Only the first counts. */
  readonly twice: readonly { readonly kept: Sheet; readonly again: Sheet }[];
  /** Sheets that are asked about before they count. They are in none of the lists above. */
  readonly aside: readonly Aside[];
}

/** A sheet that an order still lacks. */
export interface Missing {
  readonly station: string;
  readonly kind: "device" | "plate";
  /** Which opening, for a device. */
  readonly position?: number;
}
