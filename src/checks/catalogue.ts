import type { FileCheck, LetterCheck, OrderCheck, SheetCheck } from "./check.ts";
import { archiveLocked } from "./file/archive-locked.ts";
import { attachmentTooLarge } from "./file/attachment-too-large.ts";
import { attachmentUnreadable } from "./file/attachment-unreadable.ts";
import { dynamicForm } from "./file/dynamic-form.ts";
import { listBesideSheets } from "./file/list-beside-sheets.ts";
import { listNotTaken } from "./file/list-not-taken.ts";
import { notAForm } from "./file/not-a-form.ts";
import { officeDocument } from "./file/office-document.ts";
import { portfolio } from "./file/portfolio.ts";
import { printedSheet } from "./file/printed-sheet.ts";
import { recording } from "./file/recording.ts";
import { savedBlank } from "./file/saved-blank.ts";
import { scannedSheet } from "./file/scanned-sheet.ts";
import { severalSheetsInFile } from "./file/several-sheets-in-file.ts";
import { sheetDamaged } from "./file/sheet-damaged.ts";
import { sheetLocked } from "./file/sheet-locked.ts";
import { textBeside } from "./file/text-beside.ts";
import { unknownForm } from "./file/unknown-form.ts";
import { letterSaysMore } from "./letter/letter-says-more.ts";
import { noSheet } from "./letter/no-sheet.ts";
import { photographedSheet } from "./letter/photographed-sheet.ts";
import { questionAnswered } from "./letter/question-answered.ts";
import { senderUnproven } from "./letter/sender-unproven.ts";
import { severalOrders } from "./letter/several-orders.ts";
import { sharedLink } from "./letter/shared-link.ts";
import { abbreviationInconsistent } from "./order/abbreviation-inconsistent.ts";
import { billToDiffers } from "./order/bill-to-differs.ts";
import { contactDiffers } from "./order/contact-differs.ts";
import { countDiffers } from "./order/count-differs.ts";
import { deviceCopiedInPlate } from "./order/device-copied-in-plate.ts";
import { deviceWithoutPlate } from "./order/device-without-plate.ts";
import { devicesExchanged } from "./order/devices-exchanged.ts";
import { emailDomainSlip } from "./order/email-domain-slip.ts";
import { fileNameContradicts } from "./order/file-name-contradicts.ts";
import { fileStillUnread } from "./order/file-still-unread.ts";
import { finishDiffersInPlate } from "./order/finish-differs-in-plate.ts";
import { finishOfPlateNotMade } from "./order/finish-of-plate-not-made.ts";
import { gangCountDiffers } from "./order/gang-count-differs.ts";
import { headerLeftOut } from "./order/header-left-out.ts";
import { letterStillOpen } from "./order/letter-still-open.ts";
import { letteringDiffersInPlate } from "./order/lettering-differs-in-plate.ts";
import { managerWord } from "./order/manager-word.ts";
import { moreAnnounced } from "./order/more-announced.ts";
import { numberLeftOut } from "./order/number-left-out.ts";
import { oppositesOutOfOrder } from "./order/opposites-out-of-order.ts";
import { orderNumberNearMiss } from "./order/order-number-near-miss.ts";
import { orderReleased } from "./order/order-released.ts";
import { plateMissingDevices } from "./order/plate-missing-devices.ts";
import { plateTwice } from "./order/plate-twice.ts";
import { plateWithoutMark } from "./order/plate-without-mark.ts";
import { positionTakenTwice } from "./order/position-taken-twice.ts";
import { projectDiffers } from "./order/project-differs.ts";
import { projectNearMiss } from "./order/project-near-miss.ts";
import { rowLeftOut } from "./order/row-left-out.ts";
import { sameFileNameTwice } from "./order/same-file-name-twice.ts";
import { sameSheetTwice } from "./order/same-sheet-twice.ts";
import { sheetAfterCancellation } from "./order/sheet-after-cancellation.ts";
import { sheetReplaced } from "./order/sheet-replaced.ts";
import { shipToDiffers } from "./order/ship-to-differs.ts";
import { standaloneInPlate } from "./order/standalone-in-plate.ts";
import { stationMarkInNotes } from "./order/station-mark-in-notes.ts";
import { stationMarkNearMiss } from "./order/station-mark-near-miss.ts";
import { unmarkedSheetAgain } from "./order/unmarked-sheet-again.ts";
import { whichSheetCounts } from "./order/which-sheet-counts.ts";
import { wordSpeltTwoWays } from "./order/word-spelt-two-ways.ts";
import { abbreviationUnknown } from "./sheet/abbreviation-unknown.ts";
import { addressIncomplete } from "./sheet/address-incomplete.ts";
import { blankSheet } from "./sheet/blank-sheet.ts";
import { characterNotCuttable } from "./sheet/character-not-cuttable.ts";
import { emailMalformed } from "./sheet/email-malformed.ts";
import { fieldInDoubt } from "./sheet/field-in-doubt.ts";
import { fieldMissing } from "./sheet/field-missing.ts";
import { fieldNotRead } from "./sheet/field-not-read.ts";
import { fieldPlaceholder } from "./sheet/field-placeholder.ts";
import { fieldUnreadable } from "./sheet/field-unreadable.ts";
import { fieldsFlattened } from "./sheet/fields-flattened.ts";
import { finishNotMade } from "./sheet/finish-not-made.ts";
import { handwritingOnSheet } from "./sheet/handwriting-on-sheet.ts";
import { headerSaysWait } from "./sheet/header-says-wait.ts";
import { imagePastedOver } from "./sheet/image-pasted-over.ts";
import { invisibleCharacter } from "./sheet/invisible-character.ts";
import { layoutChosenTwice } from "./sheet/layout-chosen-twice.ts";
import { layoutNotChosen } from "./sheet/layout-not-chosen.ts";
import { legendCaseMixed } from "./sheet/legend-case-mixed.ts";
import { legendEmpty } from "./sheet/legend-empty.ts";
import { legendPlaceNotMade } from "./sheet/legend-place-not-made.ts";
import { legendPlaceholder } from "./sheet/legend-placeholder.ts";
import { legendPunctuation } from "./sheet/legend-punctuation.ts";
import { legendRepeatedInPlate } from "./sheet/legend-repeated-in-plate.ts";
import { legendSpacing } from "./sheet/legend-spacing.ts";
import { legendTooWide } from "./sheet/legend-too-wide.ts";
import { letteringUnreadable } from "./sheet/lettering-unreadable.ts";
import { lettersTooSmall } from "./sheet/letters-too-small.ts";
import { lettersTouch } from "./sheet/letters-touch.ts";
import { listSaysOtherwise } from "./sheet/list-says-otherwise.ts";
import { lookAlikeLetter } from "./sheet/look-alike-letter.ts";
import { markNamesSeveral } from "./sheet/mark-names-several.ts";
import { noWayToReachYou } from "./sheet/no-way-to-reach-you.ts";
import { notesCarryOrders } from "./sheet/notes-carry-orders.ts";
import { orderNumberPlaceholder } from "./sheet/order-number-placeholder.ts";
import { outdatedEdition } from "./sheet/outdated-edition.ts";
import { pagesBesideSheet } from "./sheet/pages-beside-sheet.ts";
import { pagesUnseen } from "./sheet/pages-unseen.ts";
import { partKeyMismatch } from "./sheet/part-key-mismatch.ts";
import { partKeyMisread } from "./sheet/part-key-misread.ts";
import { phoneMalformed } from "./sheet/phone-malformed.ts";
import { positionOutOfRange } from "./sheet/position-out-of-range.ts";
import { postcodeStateMismatch } from "./sheet/postcode-state-mismatch.ts";
import { projectOrderExchanged } from "./sheet/project-order-exchanged.ts";
import { readersDisagree } from "./sheet/readers-disagree.ts";
import { redBody } from "./sheet/red-body.ts";
import { rowMaybeCutOff } from "./sheet/row-maybe-cut-off.ts";
import { rowOrder } from "./sheet/row-order.ts";
import { rowTooLong } from "./sheet/row-too-long.ts";
import { rowWithoutFace } from "./sheet/row-without-face.ts";
import { safetyWording } from "./sheet/safety-wording.ts";
import { sheetFromList } from "./sheet/sheet-from-list.ts";
import { sheetRecovered } from "./sheet/sheet-recovered.ts";
import { shipToUnclear } from "./sheet/ship-to-unclear.ts";
import { somethingOnPage } from "./sheet/something-on-page.ts";
import { spelling } from "./sheet/spelling.ts";
import { typedOverSheet } from "./sheet/typed-over-sheet.ts";
import { valueHidden } from "./sheet/value-hidden.ts";
import { wordSlip } from "./sheet/word-slip.ts";

// Each list stands in the order in which a person would want to read what its checks find.

/** Every check on an attachment, whatever it is. */
export const fileChecks: readonly FileCheck[] = [
  savedBlank,
  severalSheetsInFile,
  unknownForm,
  dynamicForm,
  portfolio,
  scannedSheet,
  printedSheet,
  sheetLocked,
  archiveLocked,
  sheetDamaged,
  attachmentTooLarge,
  recording,
  attachmentUnreadable,
  listNotTaken,
  listBesideSheets,
  officeDocument,
  textBeside,
  notAForm,
];

/** Every check on a single sheet. */
export const sheetChecks: readonly SheetCheck[] = [
  blankSheet,
  outdatedEdition,
  handwritingOnSheet,
  typedOverSheet,
  imagePastedOver,
  sheetRecovered,
  somethingOnPage,
  pagesUnseen,
  pagesBesideSheet,
  readersDisagree,
  valueHidden,
  fieldsFlattened,
  fieldNotRead,
  fieldUnreadable,
  fieldMissing,
  fieldPlaceholder,
  fieldInDoubt,
  noWayToReachYou,
  emailMalformed,
  phoneMalformed,
  addressIncomplete,
  postcodeStateMismatch,
  shipToUnclear,
  orderNumberPlaceholder,
  headerSaysWait,
  projectOrderExchanged,
  markNamesSeveral,
  layoutNotChosen,
  layoutChosenTwice,
  legendPlaceNotMade,
  positionOutOfRange,
  finishNotMade,
  letteringUnreadable,
  redBody,
  partKeyMisread,
  partKeyMismatch,
  rowWithoutFace,
  legendEmpty,
  rowTooLong,
  legendTooWide,
  lettersTooSmall,
  lettersTouch,
  rowOrder,
  characterNotCuttable,
  invisibleCharacter,
  lookAlikeLetter,
  rowMaybeCutOff,
  spelling,
  wordSlip,
  legendRepeatedInPlate,
  safetyWording,
  legendPlaceholder,
  legendPunctuation,
  legendSpacing,
  legendCaseMixed,
  abbreviationUnknown,
  notesCarryOrders,
  listSaysOtherwise,
  sheetFromList,
];

/** Every check on a whole order. */
export const orderChecks: readonly OrderCheck[] = [
  plateWithoutMark,
  plateTwice,
  deviceWithoutPlate,
  positionTakenTwice,
  standaloneInPlate,
  fileNameContradicts,
  gangCountDiffers,
  finishOfPlateNotMade,
  finishDiffersInPlate,
  letteringDiffersInPlate,
  deviceCopiedInPlate,
  devicesExchanged,
  numberLeftOut,
  wordSpeltTwoWays,
  stationMarkNearMiss,
  stationMarkInNotes,
  orderNumberNearMiss,
  whichSheetCounts,
  sheetAfterCancellation,
  countDiffers,
  moreAnnounced,
  fileStillUnread,
  letterStillOpen,
  orderReleased,
  managerWord,
  projectDiffers,
  projectNearMiss,
  billToDiffers,
  shipToDiffers,
  contactDiffers,
  headerLeftOut,
  sheetReplaced,
  rowLeftOut,
  emailDomainSlip,
  sameSheetTwice,
  unmarkedSheetAgain,
  sameFileNameTwice,
  abbreviationInconsistent,
  oppositesOutOfOrder,
  plateMissingDevices,
];

/** Every check on what a letter brought, taken together. */
export const letterChecks: readonly LetterCheck[] = [
  noSheet,
  letterSaysMore,
  photographedSheet,
  sharedLink,
  senderUnproven,
  severalOrders,
  questionAnswered,
];
