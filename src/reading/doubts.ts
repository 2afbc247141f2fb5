import type { Place } from "../trade/place.ts";
import type { Doubt } from "../trade/sheet.ts";
import type { Edition } from "./edition.ts";
import type { Box, Difference, PageFacts, PageMark, PdfFacts } from "./facts.ts";
import { areaOf, common, overlap, standsIn } from "./pdf/boxes.ts";
import { hiddenValues, sameText } from "./pdf/hidden-values.ts";
import { seenAt, somethingMore } from "./seen.ts";

/** A field that can be filled in, at one place where it shows. */
interface Frame {
  readonly place: Place;
  readonly box: Box;
  /** What the field holds. */
  readonly values: readonly string[];
  /** What its blank form prints there. */
  readonly prints: string;
}

/** Everything about a form's file and pages that may give it another meaning than its fields have. */
export function doubtsOf(facts: PdfFacts, edition: Edition): Doubt[] {
  const { fields, pages, widgets, recovered } = facts;
  const names = new Set(fields.map(({ name }) => name));
  // A viewer leaves no field out. A damaged file does.
  const hasLost = edition.fields.some(({ name, place }) => place !== undefined && !names.has(name));
  const unseen = pages === undefined || widgets.some(({ page }) => page > pages.length);
  const marked = (pages ?? []).flatMap((page, i): Marked[] => {
    const frames = framesOn(i + 1, facts, edition);
    return page.marks.flatMap((mark) =>
      doubtsAbout(mark, page, frames, edition).map((doubt) => ({ doubt, page: i + 1, box: mark.box })),
    );
  });
  const known = [
    ...marked,
    ...hiddenValues(facts, edition).map((doubt): Marked => ({ doubt: seenFlat(doubt, facts) })),
  ];
  return [
    ...(recovered || hasLost ? [{ what: "recovered" } as const] : []),
    ...(unseen ? [{ what: "unseen" } as const] : []),
    ...withoutRepeats(withDifferences(known, facts, edition)),
  ];
}

/** A doubt, and where on the pages its cause lies. */
interface Marked {
  readonly doubt: Doubt;
  readonly page?: number;
  readonly box?: Box;
}

/** A doubt about fields that no longer show, on a page that was compared with its blank. */
function seenFlat(doubt: Doubt, { differences }: PdfFacts): Doubt {
  return doubt.what === "flattened" && differences !== undefined ? { ...doubt, seen: { page: 1 } } : doubt;
}

/**
 * Adds what the comparison of the pages found. A difference at the place of a known doubt gives that doubt its
 * picture, so that one thing is told once.
 */
function withDifferences(known: readonly Marked[], facts: PdfFacts, edition: Edition): Doubt[] {
  const places = new Map(edition.fields.map(({ name, place }) => [name, place]));
  const told = known.map((marked) => ({ ...marked }));
  const more = (facts.differences ?? []).flatMap((difference): Doubt[] => {
    const place = places.get(difference.field ?? "");
    const before = told.filter(
      ({ doubt, page, box }) =>
        (place !== undefined && doubt.place === place) ||
        // Everything on a further page is the sender's.
        (page === difference.page && difference.what === "page") ||
        (page === difference.page &&
          box !== undefined &&
          difference.box !== undefined &&
          overlap(around(box), difference.box)),
    );
    for (const one of before)
      if (one.doubt.seen === undefined) one.doubt = { ...one.doubt, seen: seenAt(difference) };
    if (before.length > 0 || (difference.what === "field" && place === undefined)) return [];
    return difference.what === "field"
      ? [shownOtherwise(difference, place, facts)]
      : somethingMore(difference, facts, edition);
  });
  const all = [...told.map(({ doubt }) => doubt), ...more];
  // If all fields are gone from the page, it is told once that the page shows something else.
  const hidden = all.filter(({ what, shown }) => what === "value-hidden" && shown === undefined);
  return all.some(({ what }) => what === "flattened") && hidden.length > 0
    ? [{ what: "flattened" }, ...all.filter((one) => one.what !== "flattened" && !hidden.includes(one))]
    : all;
}

function shownOtherwise(difference: Difference, place: Place | undefined, { fields }: PdfFacts): Doubt {
  const text = fields.find(({ name }) => name === difference.field)?.values.join(", ") ?? "";
  return {
    what: "value-hidden",
    ...(place === undefined ? {} : { place }),
    ...(text === "" ? {} : { text }),
    seen: seenAt(difference),
  };
}

/** A box made larger by the points by which the ends of a stroke may lie beyond it. */
function around([left, bottom, right, top]: Box): Box {
  return [left - 4, bottom - 4, right + 4, top + 4];
}

function framesOn(page: number, { widgets, fields }: PdfFacts, edition: Edition): Frame[] {
  const values = new Map(fields.map(({ name, values }) => [name, values]));
  return edition.fields.flatMap(({ name, place, prints = "" }): Frame[] => {
    if (place === undefined || place === "edition") return [];
    const held = values.get(name) ?? [];
    return widgets
      .filter((widget) => widget.field === name && widget.page === page && !widget.hidden)
      .map(({ box }) => ({ place, box, values: held, prints }));
  });
}

function doubtsAbout(mark: PageMark, page: PageFacts, frames: readonly Frame[], edition: Edition): Doubt[] {
  const { text } = mark;
  const found = text === undefined ? {} : { text };
  const under = frames.filter(({ box }) => overlap(mark.box, box)).map(({ place }) => place);
  switch (mark.what) {
    case "ink":
      return onEach("handwriting", under);
    case "free-text":
      // The form itself may have text boxes.
      return edition.fields.some(({ prints }) => prints === text) ? [] : onEach("typed-over", under, found);
    case "stamp":
      // A picture beside the fields is a seal or a logo, and says nothing of the order.
      if (under.length === 0) return [];
      return text === undefined ? onEach("handwriting", under) : onEach("typed-over", under, found);
    case "image":
      return imageOver(mark.box, page, frames, edition).map((place) => ({ what: "image-over", place }));
    case "text":
      break;
  }
  return frames
    .filter((frame) => standsIn(mark.box, frame.box) && !isExpected(text ?? "", frame))
    .map(({ place }) => ({ what: "typed-over", place, ...found }));
}

/** A doubt about each place. If it touches no place it is about the sheet. */
function onEach(what: Doubt["what"], places: readonly Place[], found: { text?: string } = {}): Doubt[] {
  return places.length === 0 ? [{ what, ...found }] : places.map((place) => ({ what, place, ...found }));
}

/**
 * Whether a text is expected in a field: lines and dots to write on, a hint of the form, or the field's own value
 * drawn a second time.
 */
function isExpected(text: string, { values, prints }: Frame): boolean {
  return (
    !/[\p{L}\p{N}]/u.test(text) ||
    prints.includes(text.trim()) ||
    values.some((value) => sameText(value, text))
  );
}

/**
 * An image covers a page or a field if it covers such a part of it, or if such a part of the image lies on the field.
 * `side` is in points.
 */
const least = { ofPage: 0.7, ofField: 0.25, ofImage: 0.5, side: 3 };

function imageOver(image: Box, page: PageFacts, frames: readonly Frame[], { drawn }: Edition): Place[] {
  const [width, height] = [image[2] - image[0], image[3] - image[1]];
  // Some programs draw lines as images. Some forms are one picture with fields over it.
  const isBackground = !drawn && areaOf(image) >= least.ofPage * page.width * page.height;
  if (Math.min(width, height) < least.side || isBackground) return [];
  return frames
    .filter(({ box }) => {
      const shared = areaOf(common(image, box));
      return shared >= least.ofField * areaOf(box) || shared >= least.ofImage * areaOf(image);
    })
    .map(({ place }) => place);
}

function withoutRepeats(doubts: readonly Doubt[]): Doubt[] {
  return [...new Map(doubts.map((doubt) => [JSON.stringify(doubt), doubt])).values()];
}
