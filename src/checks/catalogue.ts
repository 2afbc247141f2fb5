import type { FileCheck, LetterCheck, OrderCheck, SheetCheck } from "./check.ts";
import { attachmentUnreadable } from "./file/attachment-unreadable.ts";
import { notAForm } from "./file/not-a-form.ts";
import { printedSheet } from "./file/printed-sheet.ts";
import { sheetDamaged } from "./file/sheet-damaged.ts";
import { sheetLocked } from "./file/sheet-locked.ts";
import { unknownForm } from "./file/unknown-form.ts";
import { noSheet } from "./letter/no-sheet.ts";
import { senderUnproven } from "./letter/sender-unproven.ts";
import { severalOrders } from "./letter/several-orders.ts";
import { billToDiffers } from "./order/bill-to-differs.ts";
import { contactDiffers } from "./order/contact-differs.ts";
import { deviceWithoutPlate } from "./order/device-without-plate.ts";
import { finishDiffersInPlate } from "./order/finish-differs-in-plate.ts";
import { gangCountDiffers } from "./order/gang-count-differs.ts";
import { orderNumberNearMiss } from "./order/order-number-near-miss.ts";
import { plateMissingDevices } from "./order/plate-missing-devices.ts";
import { plateTwice } from "./order/plate-twice.ts";
import { plateWithoutMark } from "./order/plate-without-mark.ts";
import { positionTakenTwice } from "./order/position-taken-twice.ts";
import { projectDiffers } from "./order/project-differs.ts";
import { projectNearMiss } from "./order/project-near-miss.ts";
import { sameFileNameTwice } from "./order/same-file-name-twice.ts";
import { sameSheetTwice } from "./order/same-sheet-twice.ts";
import { shipToDiffers } from "./order/ship-to-differs.ts";
import { standaloneInPlate } from "./order/standalone-in-plate.ts";
import { stationMarkInNotes } from "./order/station-mark-in-notes.ts";
import { stationMarkNearMiss } from "./order/station-mark-near-miss.ts";
import { unmarkedSheetAgain } from "./order/unmarked-sheet-again.ts";
import { addressIncomplete } from "./sheet/address-incomplete.ts";
import { blankSheet } from "./sheet/blank-sheet.ts";
import { characterNotCuttable } from "./sheet/character-not-cuttable.ts";
import { emailMalformed } from "./sheet/email-malformed.ts";
import { fieldMissing } from "./sheet/field-missing.ts";
import { fieldUnreadable } from "./sheet/field-unreadable.ts";
import { finishNotMade } from "./sheet/finish-not-made.ts";
import { layoutChosenTwice } from "./sheet/layout-chosen-twice.ts";
import { layoutNotChosen } from "./sheet/layout-not-chosen.ts";
import { legendCaseMixed } from "./sheet/legend-case-mixed.ts";
import { legendEmpty } from "./sheet/legend-empty.ts";
import { legendPlaceholder } from "./sheet/legend-placeholder.ts";
import { legendSpacing } from "./sheet/legend-spacing.ts";
import { letteringUnreadable } from "./sheet/lettering-unreadable.ts";
import { noWayToReachYou } from "./sheet/no-way-to-reach-you.ts";
import { notesCarryOrders } from "./sheet/notes-carry-orders.ts";
import { orderNumberPlaceholder } from "./sheet/order-number-placeholder.ts";
import { outdatedEdition } from "./sheet/outdated-edition.ts";
import { partKeyMismatch } from "./sheet/part-key-mismatch.ts";
import { partKeyMisread } from "./sheet/part-key-misread.ts";
import { phoneMalformed } from "./sheet/phone-malformed.ts";
import { positionOutOfRange } from "./sheet/position-out-of-range.ts";
import { postcodeStateMismatch } from "./sheet/postcode-state-mismatch.ts";
import { readersDisagree } from "./sheet/readers-disagree.ts";
import { rowOrder } from "./sheet/row-order.ts";
import { rowTooLong } from "./sheet/row-too-long.ts";
import { rowWithoutFace } from "./sheet/row-without-face.ts";
import { shipToUnclear } from "./sheet/ship-to-unclear.ts";

// Each list stands in the order in which a person would want to read what its checks find.

/** Every check on an attachment, whatever it is. */
export const fileChecks: readonly FileCheck[] = [
  unknownForm,
  printedSheet,
  sheetLocked,
  sheetDamaged,
  notAForm,
  attachmentUnreadable,
];

/** Every check on a single sheet. */
export const sheetChecks: readonly SheetCheck[] = [
  blankSheet,
  outdatedEdition,
  readersDisagree,
  fieldUnreadable,
  fieldMissing,
  noWayToReachYou,
  emailMalformed,
  phoneMalformed,
  addressIncomplete,
  postcodeStateMismatch,
  shipToUnclear,
  orderNumberPlaceholder,
  layoutNotChosen,
  layoutChosenTwice,
  positionOutOfRange,
  finishNotMade,
  letteringUnreadable,
  partKeyMisread,
  partKeyMismatch,
  rowWithoutFace,
  legendEmpty,
  rowTooLong,
  rowOrder,
  characterNotCuttable,
  legendPlaceholder,
  legendSpacing,
  legendCaseMixed,
  notesCarryOrders,
];

/** Every check on a whole order. */
export const orderChecks: readonly OrderCheck[] = [
  plateWithoutMark,
  plateTwice,
  deviceWithoutPlate,
  positionTakenTwice,
  standaloneInPlate,
  gangCountDiffers,
  finishDiffersInPlate,
  stationMarkNearMiss,
  stationMarkInNotes,
  orderNumberNearMiss,
  projectDiffers,
  projectNearMiss,
  billToDiffers,
  shipToDiffers,
  contactDiffers,
  sameSheetTwice,
  unmarkedSheetAgain,
  sameFileNameTwice,
  plateMissingDevices,
];

/** Every check on what a letter brought, taken together. */
export const letterChecks: readonly LetterCheck[] = [noSheet, senderUnproven, severalOrders];
