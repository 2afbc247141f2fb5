import type { ListFault } from "../../trade/list-fault.ts";
import { defineFileCheck } from "../check.ts";
import { listAs } from "../sample.ts";

/** Places named of one kind. */
const mostNamed = 12;

export const listNotTaken = defineFileCheck({
  id: "list-not-taken",
  title: "A station list with more in it than cells of text",
  severity: "stops",
  source: { kind: "house" },
  why: "A list orders what its page shows. Where a part of it is hidden, stands where nothing is read or looks otherwise than it is held, nobody can say what was meant, and no sheet is made of any of it.",
  wordings: {
    hidden: {
      says: "Something is filled in where the list is hidden: {places}.",
      fix: "Show it, or delete it there, and send the list again.",
    },
    "set-aside": {
      says: "A sheet of the list has a name that speaks against it: {places}.",
      fix: "Delete that sheet, or give it another name if its rows are meant, and send the list again.",
    },
    merged: {
      says: "Cells of the list are merged: {places}.",
      fix: "Unmerge them, so that every cell says what is its own, and send the list again.",
    },
    comment: {
      says: "The list has comments on its cells.",
      fix: "Write under “Notes” what matters, delete the comments, and send the list again.",
    },
    picture: {
      says: "The list has pictures, drawings or objects on it.",
      fix: "Delete them and send the list again.",
    },
    rule: {
      says: "A rule gives cells of the list another look: {places}.",
      fix: "Clear the conditional formatting and send the list again.",
    },
    program: {
      says: "The list holds a program, or a link to another file.",
      fix: "Save it as a plain workbook (.xlsx) without macros and links, and send it again.",
    },
    part: {
      says: "The list holds something besides its cells: {places}.",
      fix: "Delete it, or copy what is filled in into an empty list, and send that.",
    },
    "too-long": {
      says: "The list is longer than one list may be: {places}.",
      fix: "Split it into several lists and send those.",
    },
    unplaced: {
      says: "Something stands where the list has no place for it: {places}.",
      fix: "Put it into the column where it belongs, or under “Notes”, or delete it, and send the list again.",
    },
    header: {
      says: "A page header or footer of the list says what stands in none of its cells: {places}.",
      fix: "Write under “Notes” what matters, delete it there, and send the list again.",
    },
    unclosed: {
      says: "A quotation mark is opened in the list and not closed, so it is not clear where the cell ends: {places}.",
      fix: "Close it or delete it, and send the list again.",
    },
    twice: {
      says: "The list asks for one thing twice: {places}.",
      fix: "Delete the one that is not meant and send the list again.",
    },
    empty: {
      says: "The list has no device in it.",
      fix: "Fill in a row for each device and send the list again.",
    },
  },
  passing: [
    { shows: "a list of which every cell is read", given: listAs() },
    { shows: "a sheet that was made of a list", given: { ...listAs(), kind: "sheet" } },
  ],
  failing: [
    {
      shows: "rows that a filter hides",
      given: listAs({ what: "hidden", where: "Stations!A5" }, { what: "hidden", where: "Stations!A6" }),
      wording: "hidden",
      says: "Something is filled in where the list is hidden: Stations!A5 and Stations!A6.",
    },
    {
      shows: "an older copy that was kept in the same workbook",
      given: listAs({ what: "set-aside", where: "Stations OLD" }),
      wording: "set-aside",
      says: "A sheet of the list has a name that speaks against it: Stations OLD.",
    },
    {
      shows: "one mark for two rows",
      given: listAs({ what: "merged", where: "Stations!A2:A3" }),
      wording: "merged",
      says: "Cells of the list are merged: Stations!A2:A3.",
    },
    { shows: "a comment", given: listAs({ what: "comment", where: "xl/comments1.xml" }), wording: "comment" },
    { shows: "a logo", given: listAs({ what: "picture", where: "xl/media/image1.png" }), wording: "picture" },
    {
      shows: "a colour that follows from what is typed",
      given: listAs({ what: "rule", where: "Stations!A2:A60" }),
      wording: "rule",
      says: "A rule gives cells of the list another look: Stations!A2:A60.",
    },
    { shows: "a macro", given: listAs({ what: "program", where: "xl/vbaProject.bin" }), wording: "program" },
    {
      shows: "a chart on a sheet of its own",
      given: listAs({ what: "part", where: "Chart1" }),
      wording: "part",
      says: "The list holds something besides its cells: Chart1.",
    },
    {
      shows: "many thousand rows",
      given: listAs({ what: "too-long", where: "row 102" }),
      wording: "too-long",
      says: "The list is longer than one list may be: row 102.",
    },
    {
      shows: "a remark beside the rows",
      given: listAs({ what: "unplaced", where: "AB7", text: "please engrave deep" }),
      wording: "unplaced",
      says: "Something stands where the list has no place for it: AB7 “please engrave deep”.",
    },
    {
      shows: "a header over the page",
      given: listAs({ what: "header", where: "Stations", text: "Do not make A-2 yet" }),
      wording: "header",
      says: "A page header or footer of the list says what stands in none of its cells: Stations “Do not make A-2 yet”.",
    },
    {
      shows: "inches with one mark of two",
      given: listAs({ what: "unclosed", where: "AB7", text: "48 high" }),
      wording: "unclosed",
      says: "A quotation mark is opened in the list and not closed, so it is not clear where the cell ends: AB7 “48 high”.",
    },
    {
      shows: "two order numbers",
      given: listAs({ what: "twice", where: "Order!B9", text: "Order number" }),
      wording: "twice",
      says: "The list asks for one thing twice: Order!B9 “Order number”.",
    },
    {
      shows: "a list as it was sent out",
      given: listAs({ what: "empty", where: "Stations" }),
      wording: "empty",
    },
  ],
  *find({ id, kind, faults = [] }, _, say) {
    if (kind !== "list") return;
    for (const [what, found] of Map.groupBy(faults, (fault) => fault.what))
      yield say(what, { places: placesOf(found) }, [{ file: id }]);
  },
});

function placesOf(found: readonly ListFault[]): string[] {
  const named = found
    .slice(0, mostNamed)
    .map(({ where, text }) => (text === undefined ? where : `${where} “${text.slice(0, 60)}”`));
  const more = found.length - named.length;
  return more > 0 ? [...named, `${more} more`] : named;
}
