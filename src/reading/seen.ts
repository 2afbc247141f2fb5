import { createHash } from "node:crypto"; // a pure function of bytes
import type { Place } from "../trade/place.ts";
import type { Doubt, More, Seen } from "../trade/sheet.ts";
import type { Edition } from "./edition.ts";
import type { Box, Difference, PdfFacts, WidgetFacts } from "./facts.ts";
import { overlap } from "./pdf/boxes.ts";

/** The name by which a picture is known. */
export function pictureName(png: Uint8Array): string {
  return createHash("sha256").update(png).digest("hex").slice(0, 24);
}

/** Where a difference was seen, in words for whoever has to look. */
export function seenAt({ page, box, picture }: Difference): Seen {
  return {
    page,
    ...(box === undefined ? {} : { box }),
    ...(picture === undefined ? {} : { picture: pictureName(picture) }),
  };
}

const kinds = {
  more: "drawn",
  laid: "drawn",
  other: "other-page",
  moved: "moved",
  less: "missing",
  page: "page",
  file: "file",
  layer: "layers",
  program: "program",
  twin: "twin",
} as const satisfies Record<Exclude<Difference["what"], "field">, More>;

/** A difference outside all fields, as a doubt. */
export function somethingMore(difference: Difference, facts: PdfFacts, edition: Edition): Doubt[] {
  const { what, page, box, field, text } = difference;
  if (what === "field") return [];
  const places = new Map(edition.fields.map(({ name, place }) => [name, place]));
  const own = field === undefined ? undefined : places.get(field);
  const here = facts.widgets.filter((widget) => widget.page === page && !widget.hidden);
  const over =
    box && here.find((widget) => overlap(widget.box, box) && places.get(widget.field) !== undefined);
  const near = box && over === undefined ? nearest(box, here, places) : over;
  const isWide = box !== undefined && coversMost(box, pageOf(difference, facts));
  const place = own ?? (isWide ? undefined : near && places.get(near.field));
  return [
    {
      what: "something-more",
      kind: kinds[what],
      ...(place === undefined ? {} : { place }),
      ...(box === undefined
        ? {}
        : { where: isWide ? "all over it" : partOf(box, pageOf(difference, facts), over !== undefined) }),
      ...(text === undefined ? {} : { text }),
      ...(page === 0 ? {} : { seen: seenAt(difference) }),
    },
  ];
}

/** A field within so many points is near enough to say where something is. */
const near = 60;

function nearest(
  box: Box,
  widgets: readonly WidgetFacts[],
  places: ReadonlyMap<string, Place | undefined>,
): WidgetFacts | undefined {
  const away = ({ box: other }: WidgetFacts): number =>
    Math.max(0, other[0] - box[2], box[0] - other[2]) + Math.max(0, other[1] - box[3], box[1] - other[3]);
  const [first] = widgets
    .filter((widget) => places.get(widget.field) !== undefined && away(widget) <= near)
    .toSorted((a, b) => away(a) - away(b));
  return first;
}

interface PageSize {
  readonly width: number;
  readonly height: number;
}

/** The size of a page. US Letter if the page was not looked at. */
function pageOf({ page }: Difference, { pages }: PdfFacts): PageSize {
  return pages?.[page - 1] ?? { width: 612, height: 792 };
}

function coversMost([left, bottom, right, top]: Box, { width, height }: PageSize): boolean {
  return right - left > 0.6 * width && top - bottom > 0.4 * height;
}

/** The part of a page in words, up to the label that follows it. `over`: it lies over a field. */
function partOf([left, bottom, right, top]: Box, { width, height }: PageSize, over: boolean): string {
  const [x, y] = [(left + right) / 2 / width, (bottom + top) / 2 / height];
  const column = x < 1 / 3 ? "left" : x > 2 / 3 ? "right" : "middle";
  const row = y < 1 / 3 ? "lower" : y > 2 / 3 ? "upper" : "";
  const part =
    row !== "" ? `in the ${row} ${column}` : column === "middle" ? "in the middle" : `at the ${column}`;
  return `${part}${over ? ", over" : ", beside"}`;
}
