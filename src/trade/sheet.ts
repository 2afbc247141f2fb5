import type { Legend } from "./legend.ts";
import type { AddressPart, Place, Print } from "./place.ts";

/** One file of one letter. Unique in the record; letters are numbered, files within them too: "12/3". */
export type FileId = string;

export interface Contact {
  readonly name?: string;
  readonly email?: string;
  readonly phone?: string;
}

/** A postal address as typed; parts left empty are absent. */
export type Address = { readonly [P in AddressPart]?: string };

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

/** What a sheet can have besides its form and its fields' values. */
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
  | "program";

/** Where something was seen on the pages of a file. */
export interface Seen {
  /** Counted from 1. */
  readonly page: number;
  /** In points from the lower left corner of the page: left, bottom, right, top. */
  readonly box?: readonly [number, number, number, number];
  /** The hash of a picture of it, which goes with the answer and is not kept in the sheet. */
  readonly picture?: string;
}

/** Something about the file or its pages that may make the sheet mean other than its fields say. */
export interface Doubt {
  readonly what: /** Pen strokes, or a drawing or signature laid over fields. */
    | "handwriting"
    /** Text on the page inside a field's frame, or in a text box laid over the page. */
    | "typed-over"
    | "image-over"
    /** What the page shows in a field is not what the field holds. */
    | "value-hidden"
    /** On the page, or in the file beside its fields, is something that the blank form does not have. */
    | "something-more"
    /** The file could be read only after repair, or its end or some of its fields are missing. */
    | "recovered"
    /** The fields hold values, but no longer show on the page: flattened by a viewer. */
    | "flattened"
    /** The pages could not be looked at within their share of time and memory. */
    | "unseen";
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

interface Common {
  readonly id: FileId;
  /** The file's name as the sender sees it. */
  readonly file: string;
  /** The name it came with, where it had to be told apart from a sister of the same name. */
  readonly named?: string;
  /** Which printed version of which form; `replacedBy`, when it is no longer accepted, is the title of the newer. */
  readonly edition: { readonly name: string; readonly title: string; readonly replacedBy?: string };
  /** How the form prints each place. Places that it does not print are absent, and nobody is blamed for them. */
  readonly prints: { readonly [P in Place]?: Print };
  readonly unread: readonly Unread[];
  readonly unsure: readonly Unsure[];
  readonly doubts: readonly Doubt[];
  readonly contact: Contact;
  readonly billTo: Address;
  readonly shipTo: Address;
  /** "Ship to: same as bill-to" is ticked. */
  readonly shipSame: boolean;
  readonly project?: string;
  readonly order?: string;
  /** Station mark: the place on the wall, such as "S-104". */
  readonly mark?: string;
  /** Gangs of the plate this sheet orders or, on a device sheet, of the plate the device goes into. */
  readonly gangs?: number;
  /** Catalogue code of the finish, or the words typed if the catalogue knows none such. */
  readonly finish?: string;
  /** Catalogue code of the lettering, or the words typed if the catalogue knows none such. */
  readonly lettering?: string;
  /** The part key the buyer wrote down, as typed. */
  readonly partKey?: string;
  readonly legends: readonly Legend[];
  readonly notes?: string;
}

/** Whether a device goes on the wall alone, with its own one-gang plate, or into a multi-gang plate. */
export const standings = [
  { code: "alone", name: "alone" },
  { code: "in-plate", name: "in a plate" },
] as const;

/** Orders one engraved push-button device. */
export interface DeviceSheet extends Common {
  readonly kind: "device";
  readonly standing?: (typeof standings)[number]["code"];
  /** Which opening of the plate, counted from 1 at the left. */
  readonly position?: number;
  /** Every layout that is marked: one, if the sheet is right. */
  readonly layouts: readonly string[];
  /** Where the legend of a one-button device sits. */
  readonly legendPlace?: string;
}

/** Orders one multi-gang wall plate. */
export interface PlateSheet extends Common {
  readonly kind: "plate";
}

export type Sheet = DeviceSheet | PlateSheet;
