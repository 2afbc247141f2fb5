import { withRendered } from "./pdfium.ts";
import { pngOf, wholeOf } from "./picture.ts";

/** Pixels of a picture at most, however long the page is. */
const mostPixels = 4_000_000;

/**
 * A page of a PDF as a PNG (ISO/IEC 15948), with its fields and annotations, so many pixels wide. No picture if the file
 * cannot be opened or has no such page.
 */
export async function pagePicture(
  bytes: Uint8Array,
  { page, width }: { readonly page: number; readonly width: number },
): Promise<{ readonly pages: number; readonly png?: Uint8Array }> {
  const made = await withRendered(bytes, ({ pageCount, sizeOf, render }) => {
    if (page < 1 || page > pageCount) return { pages: pageCount };
    const [across, down] = sizeOf(page);
    const height = Math.max(1, Math.round((width * down) / Math.max(1, across)));
    if (width * height > mostPixels) return { pages: pageCount };
    const picture = render({ page, width, height, layers: "all" });
    return { pages: pageCount, png: pngOf(picture, wholeOf(picture), mostPixels) };
  });
  return made ?? { pages: 0 };
}
