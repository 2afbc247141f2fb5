/** What keeps a station list from being taken, and where in it. */
export interface ListFault {
  readonly what: /** In a row, a column or a sheet that is hidden. */
    | "hidden"
    /** On a sheet whose name says that it does not count. */
    | "set-aside"
    | "merged"
    | "comment"
    | "picture"
    /** Cells look otherwise by a rule. */
    | "rule"
    /** A program, or a link to another file. */
    | "program"
    /** Any other part of a workbook. */
    | "part"
    /** More than is read of a list, or more stations than one list may have. */
    | "too-long"
    /** Text where nothing is read. */
    | "unplaced"
    /** A page header or footer that says what no cell does. */
    | "header"
    /** A quotation mark of a text that is opened and not closed. */
    | "unclosed"
    /** One label twice, so that nobody knows which counts. */
    | "twice"
    /** No device in it. */
    | "empty";
  /** "B14", "Order!B3", or the name of a part. */
  readonly where: string;
  readonly text?: string;
}
