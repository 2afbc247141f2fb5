import type { Legend } from "./legend.ts";
import { type Entry, type Parts, type Place, type Print, places } from "./place.ts";

/** One file of one letter. Unique in the record. Letters are numbered, and files within them: "12/3". */
export type FileId = string;

/** Whom to ask. What is left empty is absent. */
export type Contact = Parts<"device", "contact.">;

/** A postal address as typed. Parts left empty are absent. */
export type Address = Parts<"device", "billTo.">;

/** Something typed that could not be understood where the form wants a choice or a number. */
export interface Unread {
  readonly place: Place;
  readonly typed: string;
  readonly wants: string;
}

/** A field for which two readers of the same file gave two answers. */
export interface Unsure {
  readonly place: Place;
  readonly one: string;
  readonly other: string;
}

/** A field that somebody has filled in and the edition does not have. */
export interface Unmapped {
  /** The field's name in the file. */
  readonly name: string;
  readonly value: string;
}

/** What a sheet can show besides its form and the values of its fields. */
export type More =
  /** Drawn or written on the page, or over what is printed there. */
  | "drawn"
  /** A page that does not look like the form, although it has its fields. */
  | "other-page"
  /** A field that lies elsewhere than on the form. */
  | "moved"
  /** A part of the form that is missing. */
  | "missing"
  | "page"
  | "file"
  | "layers"
  | "program"
  /** A second form within the file, in another format. */
  | "twin";

/** Where something was seen on the pages of a file. */
export interface Seen {
  /** Counted from 1. */
  readonly page: number;
  /** In points from the lower left corner of the page: left, bottom, right, top. */
  readonly box?: readonly [number, number, number, number];
  /** The hash of a picture of it, which goes with the answer and is not kept in the sheet. */
  readonly picture?: string;
}

/** Something about the file or its pages that may give the sheet another meaning than its fields have. */
export interface Doubt {
  readonly what: /** Pen strokes, or a drawing or signature laid over fields. */
    | "handwriting"
    /** Text on the page inside a field's frame, or in a text box laid over the page. */
    | "typed-over"
    | "image-over"
    /** What the page shows in a field is not what the field holds. */
    | "value-hidden"
    /** Something on the page, or in the file besides its fields, that the blank form does not have. */
    | "something-more"
    /** The file could be read only after repair, or its end or some of its fields are missing. */
    | "recovered"
    /** The fields hold values, but no longer show on the page: flattened by a viewer. */
    | "flattened"
    /** The pages could not be looked at within their share of time and memory. */
    | "unseen"
    /** Pages behind or before the sheet that are pictures or drawings, perhaps of another sheet. */
    | "pictures-beside"
    /** Pages behind or before the sheet that hold words, and no field of it. */
    | "pages-beside"
    /** Pages that nobody looked at, since the file has too many. */
    | "pages-beyond";
  /** The pages beside the sheet, counted from 1. */
  readonly pages?: readonly number[];
  readonly place?: Place;
  /** For something more: which kind of thing it is. */
  readonly kind?: More;
  /** For something more: the part of the page, in words. */
  readonly where?: string;
  readonly seen?: Seen;
  /** What was found: the text on the page, or the value stored. */
  readonly text?: string;
  /** For a hidden value: what the page shows. */
  readonly shown?: string;
}

/** What a sheet leaves out and has from another sheet of its letter and order. */
export interface Inherited {
  readonly places: readonly Entry[];
  /** The name of the other sheet's file. */
  readonly from: string;
}

/** Where a sheet comes from that was filled in from a station list. */
export interface ListOrigin {
  /** The name of the list. */
  readonly file: string;
  /** The row that orders it; the first one of its station for a plate. */
  readonly row: number;
  /** The cell that says what stands at a place, filled in or not: "F14". */
  readonly cells: { readonly [P in Place]?: string };
  /** What stands in the list and cannot stand on the sheet. */
  readonly unread: readonly Unread[];
}

/** A list that says something else than a sheet, or lacks it. */
export interface Otherwise {
  /** The name of the list. */
  readonly file: string;
  readonly places: readonly {
    readonly place: Place;
    /** The cell of the list, and what stands there. */
    readonly cell: string;
    readonly says: string;
    /** What stands on the sheet. */
    readonly typed: string;
  }[];
  /** The list orders other places of its order and not this one. */
  readonly lacks?: true;
}

interface Common {
  readonly id: FileId;
  /** The file's name as the sender sees it. */
  readonly file: string;
  /** The name it came with, if a sister has the same name. */
  readonly named?: string;
  /** The date of the forwarded letter that it stands in, as ISO 8601. Absent if its whole letter has one date. */
  readonly written?: string;
  /** Absent if it came as a sheet. */
  readonly list?: ListOrigin;
  /** What a list that came beside it says otherwise of the same place. Absent if there is nothing. */
  readonly otherwise?: Otherwise;
  readonly edition: {
    readonly name: string;
    readonly title: string;
    /** If it is no longer accepted: the title of the newer edition. */
    readonly replacedBy?: string;
    /** If it is accepted for a while: the last day, as "2026-12-31", and the title of the newer edition. */
    readonly accepted?: { readonly until: string; readonly use: string };
  };
  /** How the form prints each place. A place that it does not print is absent, and nobody is blamed for it. */
  readonly prints: { readonly [P in Place]?: Print };
  readonly unread: readonly Unread[];
  readonly unsure: readonly Unsure[];
  readonly doubts: readonly Doubt[];
  /** Fields filled in that the edition does not have. Absent if there are none. */
  readonly unmapped?: readonly Unmapped[];
  /** What it left empty and holds all the same. Absent if it holds only what was typed. */
  readonly inherited?: readonly Inherited[];
  readonly contact: Contact;
  readonly billTo: Address;
  readonly shipTo: Address;
  /** "Ship to: same as bill-to" is ticked. */
  readonly shipSame: boolean;
  readonly legends: readonly Legend[];
}

/** Whether a device goes on the wall alone, with its own one-gang plate, or into a multi-gang plate. */
export const standings = [
  { code: "alone", name: "alone", also: ["stand alone", "stands alone", "standing alone", "standalone"] },
  { code: "in-plate", name: "in a plate", also: ["in plate"] },
] as const;

/** Orders one engraved push-button device. */
export interface DeviceSheet extends Common, Parts<"device"> {
  readonly kind: "device";
  readonly shipSame: boolean;
  readonly standing?: (typeof standings)[number]["code"];
  /** Every layout that is marked: one, if the sheet is right. */
  readonly layouts: readonly string[];
}

/** Orders one multi-gang wall plate. */
export interface PlateSheet extends Common, Parts<"plate"> {
  readonly kind: "plate";
  readonly shipSame: boolean;
}

export type Sheet = DeviceSheet | PlateSheet;

/** What stands at a place of a sheet, as one text: "" for nothing, "yes" for a tick. */
export function saidAt(sheet: Sheet, place: Entry): string {
  const part = places[place].part.split(".").reduce<unknown>((whole, step) => {
    return (whole as Readonly<Record<string, unknown>>)[step];
  }, sheet);
  if (typeof part === "boolean") return part ? "yes" : "";
  if (Array.isArray(part)) return part.join(" + ");
  return typeof part === "number" || typeof part === "string" ? String(part) : "";
}

/** Whether anything stands at a place of a sheet: text, a number, a choice or a tick. */
export function isFilled(sheet: Sheet, place: Entry): boolean {
  return saidAt(sheet, place) !== "";
}
