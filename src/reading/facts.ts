import type { ListFault } from "../trade/list-fault.ts";
import type { ListOrigin } from "../trade/sheet.ts";
import type { ReadField } from "./form.ts";
import type { ListFacts } from "./list/list-facts.ts";

/** A rectangle on a page in PDF points, origin at the lower left: left, bottom, right, top. */
export type Box = readonly [number, number, number, number];

/** Where a field shows on a page, and what it shows there. */
export interface WidgetFacts {
  readonly field: string;
  /** Counted from 1. */
  readonly page: number;
  readonly box: Box;
  /** The text in its appearance; undefined where it has none. */
  readonly shown?: string;
  /** Hidden, or shown on paper only. */
  readonly hidden: boolean;
}

/** Something on a page that is no field. */
export interface PageMark {
  readonly what: /** Drawn with a pen tool. */
    | "ink"
    /** Typed with a text tool. */
    | "free-text"
    /** A stamp or a signature picture laid over the page. */
    | "stamp"
    | "image"
    | "text";
  readonly box: Box;
  readonly text?: string;
}

/** Something in which a sheet differs from its edition's blank form filled in with the values of its fields. */
export interface Difference {
  readonly what: /** A field shows something else than it holds. */
    | "field"
    /** Something is drawn on the page, or its print is not as it was. */
    | "more"
    /** An annotation or a field that the form does not have. */
    | "laid"
    /** The page has the form's fields, but is another page. */
    | "other"
    /** A field lies elsewhere. */
    | "moved"
    /** A page, or a part of it, is missing. */
    | "less"
    /** A page that the form does not have. */
    | "page"
    /** A file within the file; layers that can be switched on and off; a program. */
    | "file"
    | "layer"
    | "program"
    /** A second form, in another format, that some viewers show instead. */
    | "twin";
  /** Counted from 1; 0 for the file as a whole. */
  readonly page: number;
  readonly box?: Box;
  readonly field?: string;
  /** What it says. */
  readonly text?: string;
  /** How it looks: a PNG. */
  readonly picture?: Uint8Array;
}

export interface PageFacts {
  readonly width: number;
  readonly height: number;
  readonly text: string;
  readonly marks: readonly PageMark[];
  /** The page consists of lines and shapes, with hardly any text. */
  readonly drawn?: true;
  /** A marked copy of ours added the page. */
  readonly ours?: true;
}

/** What a reader process found in a PDF that opens. */
export interface PdfFacts {
  readonly kind: "pdf";
  readonly fields: readonly ReadField[];
  readonly widgets: readonly WidgetFacts[];
  /** 0 where the reader that counts them failed. */
  readonly pageCount: number;
  /** The first pages. Undefined if looking at them took more than their share of time or memory. */
  readonly pages?: readonly PageFacts[];
  /**
   * Where the pages differ from the blank form of the edition. Undefined if there is no blank to compare with, or if
   * the comparison did not end.
   */
  readonly differences?: readonly Difference[];
  /** XFA without a form that others can read. */
  readonly dynamic: boolean;
  readonly portfolio: boolean;
  /** Readable only after repair, or by one reader alone (perhaps only some fields), or with its end missing. */
  readonly recovered: boolean;
  /** How many whole PDFs stand one behind the other, if several do. A reader sees one of them, or parts of each. */
  readonly together?: number;
  /** The files inside; absent where there are none. */
  readonly attached?: { readonly files: readonly Part[]; readonly left: readonly Left[] };
}

/** A file in a letter, or one that was taken out of a container. */
export interface Part {
  /** Its name as it was given, "" if it had none. Not yet safe to print. */
  readonly name: string;
  readonly bytes: Uint8Array;
  /** If it was filled in from a station list: where in that it stands. */
  readonly list?: Omit<ListOrigin, "file">;
  /**
   * It is no file of the sender's: a small picture in the text, a signature, or what a computer keeps beside files.
   */
  readonly looks: boolean;
  /** The date of the letter that it came in, where that was forwarded as a file. */
  readonly dated?: Date;
}

/** Something in a container that could not be taken out. */
export interface Left {
  readonly name: string;
  readonly kind: "archive-locked" | "too-large" | "damaged";
}

/** What a file says in words. */
export interface FileWords {
  readonly text: string;
  /** Words are struck out in it, or hidden. */
  readonly unsure?: true;
}

/** What a reader process found in a file. */
export type FileFacts =
  | PdfFacts
  | {
      readonly kind:
        | "locked-pdf"
        | "damaged-pdf"
        | "picture"
        | "small-picture"
        | "recording"
        | "office"
        | "locked-archive"
        | "other";
    }
  /** A station list of ours, with the sheets that were filled in from it. */
  | (ListFacts & {
      /** What it says as a text, if it is one. */
      readonly text?: FileWords;
      readonly files?: readonly Part[];
      readonly faults?: readonly ListFault[];
    })
  /** A text, or a letter that holds nothing but text. */
  | { readonly kind: "text"; readonly words: FileWords }
  /** An archive, or another container such as a forwarded letter, which has words of its own. */
  | {
      readonly kind: "archive";
      readonly files: readonly Part[];
      readonly left: readonly Left[];
      readonly words?: FileWords;
    };
