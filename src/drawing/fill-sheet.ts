import {
  AcroTextFlags,
  ParseSpeeds,
  PDFArray,
  PDFDict,
  PDFDocument,
  PDFHexString,
  PDFName,
  PDFNumber,
  type PDFObject,
  PDFRawStream,
  PDFRef,
  PDFString,
} from "pdf-lib";
import { textAppearance } from "./blank/appearance.ts";

/** What is put into a sheet, by field name: text or the chosen value; for a tick box, on or off. */
export type SheetValues = Readonly<Record<string, string | boolean>>;

/**
 * Fills a blank sheet of ours as a careful PDF program would: with values, and with the drawings that show them. Text
 * is written whatever its length and letters, since a field's limit is only a request to the program that fills it.
 * Throws, naming the field, if the sheet does not have it or it cannot take the value.
 */
export async function fillSheet(blank: Uint8Array, values: SheetValues): Promise<Uint8Array> {
  // Without the pauses that the library makes for browsers. It then takes a third of the time.
  const document = await PDFDocument.load(blank, { updateMetadata: false, parseSpeed: ParseSpeeds.Fastest });
  const fields = fieldsOf(document);
  for (const [name, value] of Object.entries(values)) {
    const field = fields.get(name);
    if (field === undefined) throw new Error(`the sheet has no field ${name}`);
    if (field.lookup(key.FT) === PDFName.of("Btn")) press(name, field, value);
    else write(name, field, value);
  }
  return document.save({ updateFieldAppearances: false, objectsPerTick: Number.POSITIVE_INFINITY });
}

/**
 * Fills in fields of a sheet of ours that anybody may have saved since. Each has a new drawing, and nothing else
 * changes. Returns the fields. Throws if the sheet no longer has such a field, or the field no longer is as we made it.
 */
export function fillInto(document: PDFDocument, values: SheetValues): PDFDict[] {
  const fields = fieldsOf(document);
  return Object.entries(values).map(([name, value]) => {
    const field = fields.get(name);
    if (field === undefined) throw new Error(`the sheet has no field ${name}`);
    if (field.lookup(key.FT) === PDFName.of("Btn")) press(name, field, value);
    else writeAnew(name, field, value, document);
    return field;
  });
}

/** The font that the form calls Helv. */
function helvIn({ catalog }: PDFDocument): PDFObject | undefined {
  const resources = catalog.lookup(PDFName.of("AcroForm"), PDFDict).lookupMaybe(PDFName.of("DR"), PDFDict);
  return resources?.lookupMaybe(PDFName.of("Font"), PDFDict)?.get(PDFName.of("Helv"));
}

/** Types into a field or chooses from a list, whatever drawing it had. */
function writeAnew(name: string, field: PDFDict, value: string | boolean, document: PDFDocument): void {
  const style = stringOf(field.lookup(key.DA));
  const font = helvIn(document);
  if (typeof value === "boolean" || !/^\/Helv [1-9]/.test(style) || font === undefined)
    throw new Error(`the field ${name} is not as it was made`);
  checkChoice(name, field, value);
  const { width, height } = field.lookup(PDFName.of("Rect"), PDFArray).asRectangle();
  const drawn = document.context.stream(textAppearance(value, { width, height, manyLines: false, style }), {
    Type: "XObject",
    Subtype: "Form",
    BBox: [0, 0, width, height],
    Resources: { Font: { Helv: font } },
  });
  field.set(key.V, PDFHexString.fromText(value));
  field.set(key.AP, document.context.obj({ N: document.context.register(drawn) }));
  field.delete(key.I);
}

const key = {
  AP: PDFName.of("AP"),
  AS: PDFName.of("AS"),
  DA: PDFName.of("DA"),
  Ff: PDFName.of("Ff"),
  FT: PDFName.of("FT"),
  I: PDFName.of("I"),
  Kids: PDFName.of("Kids"),
  N: PDFName.of("N"),
  Off: PDFName.of("Off"),
  Opt: PDFName.of("Opt"),
  T: PDFName.of("T"),
  V: PDFName.of("V"),
};

/** Every field that can hold a value, by its full name. */
function fieldsOf(document: PDFDocument): Map<string, PDFDict> {
  const found = new Map<string, PDFDict>();
  const visit = (fields: PDFArray, above: string): void => {
    for (let i = 0; i < fields.size(); i++) {
      const field = fields.lookup(i, PDFDict);
      const name = above + stringOf(field.lookup(key.T));
      if (field.has(key.FT)) found.set(name, field);
      else visit(field.lookup(key.Kids, PDFArray), `${name}.`);
    }
  };
  const form = document.catalog.lookup(PDFName.of("AcroForm"), PDFDict);
  visit(form.lookup(PDFName.of("Fields"), PDFArray), "");
  return found;
}

/** Sets a tick box by true or false, a group of round buttons by the value of one of them. */
function press(name: string, field: PDFDict, value: string | boolean): void {
  const kids = field.lookupMaybe(key.Kids, PDFArray);
  if ((kids === undefined) !== (typeof value === "boolean"))
    throw new Error(
      `the field ${name} takes ${kids === undefined ? "true or false" : "the value of a button"}`,
    );
  const widgets = kids === undefined ? [field] : kids.asArray().map((_, i) => kids.lookup(i, PDFDict));
  const wanted = typeof value === "string" ? PDFName.of(value) : undefined;
  const ons = widgets.map(onStateOf);
  if (wanted !== undefined && !ons.includes(wanted))
    throw new Error(`the field ${name} has no button ${value}`);
  const state = wanted ?? (value === true ? ons[0] : undefined) ?? key.Off;
  field.set(key.V, state);
  for (const [i, widget] of widgets.entries()) widget.set(key.AS, ons[i] === state ? state : key.Off);
}

function onStateOf(widget: PDFDict): PDFName | undefined {
  const states = widget.lookup(key.AP, PDFDict).lookup(key.N, PDFDict).keys();
  return states.find((state) => state !== key.Off);
}

/** Types into a field, or chooses from a list. */
function write(name: string, field: PDFDict, value: string | boolean): void {
  if (typeof value === "boolean") throw new Error(`the field ${name} takes text`);
  const choices = checkChoice(name, field, value);
  field.set(key.V, PDFHexString.fromText(value));

  // Drawn into the field's own stream, so that a sheet filled again and again does not grow.
  const ref = field.lookup(key.AP, PDFDict).get(key.N);
  const stream = field.context.lookup(ref);
  if (!(ref instanceof PDFRef && stream instanceof PDFRawStream))
    throw new Error(`the field ${name} has no drawing`);
  const { width, height } = stream.dict.lookup(PDFName.of("BBox"), PDFArray).asRectangle();
  const flags = field.lookupMaybe(key.Ff, PDFNumber)?.asNumber() ?? 0;
  const manyLines = choices === undefined && (flags & AcroTextFlags.Multiline) !== 0;
  const drawn = textAppearance(value, { width, height, manyLines, style: stringOf(field.lookup(key.DA)) });
  field.context.assign(ref, PDFRawStream.of(stream.dict, Buffer.from(drawn)));
}

/** The choices of a list, which has the value among them; undefined for a field where one types. */
function checkChoice(name: string, field: PDFDict, value: string): PDFArray | undefined {
  const choices = field.lookupMaybe(key.Opt, PDFArray);
  if (choices !== undefined && !choices.asArray().some((choice) => stringOf(choice) === value))
    throw new Error(`the field ${name} has no choice ${value}`);
  return choices;
}

function stringOf(object: PDFObject | undefined): string {
  return object instanceof PDFString || object instanceof PDFHexString ? object.decodeText() : "";
}
