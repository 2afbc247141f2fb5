import type { FileCheck, LetterCheck, OrderCheck, SheetCheck } from "./check.ts";
import { rowTooLong } from "./sheet/row-too-long.ts";

// Each list stands in the order in which a person would want to read what its checks find.

/** Every check on an attachment, whatever it is. */
export const fileChecks: readonly FileCheck[] = [];

/** Every check on a single sheet. */
export const sheetChecks: readonly SheetCheck[] = [rowTooLong];

/** Every check on a whole order. */
export const orderChecks: readonly OrderCheck[] = [];

/** Every check on what a letter brought, taken together. */
export const letterChecks: readonly LetterCheck[] = [];
