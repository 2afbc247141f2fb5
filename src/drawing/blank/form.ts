import {
  AcroButtonFlags,
  AcroChoiceFlags,
  AcroFieldFlags,
  AcroTextFlags,
  AnnotationFlags,
  PDFHexString,
  type PDFRef,
  PDFString,
} from "pdf-lib";
import { dotMark, inkStyle, textAppearance, tickMark } from "./appearance.ts";
import type { Box } from "./canvas.ts";
import { addField, type Entries, type FieldText, type Making, place } from "./field-tree.ts";

/**
 * A field for typing. `characters` is the most that a viewer lets one type. `fixed` is a value that nobody can
 * change.
 */
export function textField(
  making: Making,
  box: Box,
  field: FieldText & {
    readonly size: number;
    readonly characters?: number;
    readonly manyLines?: boolean;
    readonly fixed?: string;
  },
): void {
  const { size, characters, manyLines = false, fixed } = field;
  const style = inkStyle(size);
  const flags =
    AcroTextFlags.DoNotSpellCheck |
    (manyLines ? AcroTextFlags.Multiline : AcroTextFlags.DoNotScroll) |
    (fixed === undefined ? 0 : AcroFieldFlags.ReadOnly);
  const ref = addField(making, field, flags, {
    ...widget(making, box),
    FT: "Tx",
    DA: PDFString.of(style),
    // Nobody fills in what is fixed, so it is printed in letters that the file carries.
    AP: {
      N: drawing(
        making,
        box,
        textAppearance(fixed ?? "", { ...box, manyLines, style }),
        fixed === undefined ? making.canvas.helvetica : making.canvas.plain.ref,
      ),
    },
    ...(characters === undefined ? {} : { MaxLen: characters }),
    ...(fixed === undefined ? {} : { V: PDFHexString.fromText(fixed) }),
  });
  place(making, ref);
}

/** A list that opens. Its first choice is the empty one, so that a choice can be taken back. */
export function dropdown(
  making: Making,
  box: Box,
  field: FieldText & { readonly size: number; readonly choices: readonly string[] },
): void {
  const style = inkStyle(field.size);
  const ref = addField(making, field, AcroChoiceFlags.Combo, {
    ...widget(making, box),
    FT: "Ch",
    DA: PDFString.of(style),
    AP: { N: drawing(making, box, textAppearance("", { ...box, manyLines: false, style })) },
    Opt: ["", ...field.choices].map((choice) => PDFHexString.fromText(choice)),
  });
  place(making, ref);
}

/** A box to tick; its value is Yes or Off. */
export function tickBox(making: Making, box: Box, field: FieldText): void {
  const states = onOrOff(making, box, "Yes", tickMark);
  const ref = addField(making, field, 0, { ...widget(making, box), FT: "Btn", ...states, V: "Off" });
  place(making, ref);
}

/**
 * Round buttons, of which one can be on. The field's value is the `value` of that one. A second click takes it back.
 */
export function radioButtons(
  making: Making,
  field: FieldText,
  buttons: readonly {
    readonly box: Box;
    readonly value: string;
    readonly tip: string;
    /** Draws what is to be read before it. */
    readonly words: () => void;
  }[],
): void {
  const { context } = making.canvas.document;
  const kids = context.obj([]);
  const parent = addField(making, field, AcroButtonFlags.Radio, { FT: "Btn", V: "Off", Kids: kids });
  for (const { box, value, tip, words } of buttons) {
    words();
    const ref = context.register(
      context.obj({
        ...widget(making, box),
        ...onOrOff(making, box, value, dotMark),
        Parent: parent,
        TU: PDFHexString.fromText(tip),
      }),
    );
    kids.push(ref);
    place(making, ref);
  }
}

function widget({ canvas: { page } }: Making, box: Box): Entries {
  const bottom = page.getHeight() - box.y - box.height;
  return {
    Type: "Annot",
    Subtype: "Widget",
    Rect: [box.x, bottom, box.x + box.width, bottom + box.height],
    F: AnnotationFlags.Print,
    P: page.ref,
    // The frame is drawn on the page and not in the field, so that a viewer which redraws the field cannot change it.
    BS: { W: 0 },
  };
}

/** The two looks of a box. `letter` is the ZapfDingbats character with which a viewer may redraw the mark. */
function onOrOff(
  making: Making,
  box: Box,
  on: string,
  mark: { letter: string; drawn(size: number): string },
): Entries {
  // Boxes of one size share their drawings, since they are only switched and never redrawn with a value.
  const shared = (name: string, operators: string): PDFRef => {
    const key = `${name} ${box.width}`;
    const ref = making.form.marks.get(key) ?? drawing(making, box, operators);
    making.form.marks.set(key, ref);
    return ref;
  };
  return {
    AS: "Off",
    AP: { N: { [on]: shared(mark.letter, mark.drawn(box.width)), Off: shared("off", "") } },
    MK: { CA: PDFString.of(mark.letter) },
    DA: PDFString.of(inkStyle(0, "ZaDb")),
  };
}

function drawing(
  { canvas: { document, helvetica } }: Making,
  { width, height }: Box,
  operators: string,
  font = helvetica,
): PDFRef {
  const { context } = document;
  return context.register(
    context.stream(operators, {
      Type: "XObject",
      Subtype: "Form",
      BBox: [0, 0, width, height],
      Resources: { Font: { Helv: font } },
    }),
  );
}
