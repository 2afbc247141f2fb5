import { type Catalogue, finishOf, letteringOf } from "../../catalogue/catalogue.ts";
import { luminance } from "../../lettering/contrast.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { partsOf } from "../blank/canvas.ts";

/** What a body of one finish is drawn in. */
export interface Paint {
  readonly body: string;
  /** The colour around the body and its buttons: darker or lighter, so that it shows. */
  readonly edge: string;
  /** The shadow between buttons. */
  readonly gap: string;
  readonly lettering: string;
}

const [black, white] = ["#000000", "#FFFFFF"] as const;

/** The colours of a sheet. A finish that is not chosen or not made is white, lettered in whatever shows. */
export function paintOf(sheet: Sheet, catalogue: Catalogue): Paint {
  const body = finishOf(catalogue, sheet.finish ?? "")?.colour ?? white;
  // Half way from black to white as the eye sees it.
  const isLight = luminance(body) > 0.18;
  return {
    body,
    edge: mixed(body, isLight ? black : white, isLight ? 0.4 : 0.35),
    gap: mixed(body, black, isLight ? 0.3 : 0.6),
    lettering: letteringOf(catalogue, sheet.lettering ?? "")?.colour ?? (isLight ? black : white),
  };
}

/** So much of the other colour mixed into the one. */
function mixed(one: string, other: string, share: number): string {
  const others = partsOf(other);
  const parts = partsOf(one).map((part, i) => part + ((others[i] ?? 0) - part) * share);
  return `#${parts
    .map((part) =>
      Math.round(part * 255)
        .toString(16)
        .padStart(2, "0"),
    )
    .join("")}`.toUpperCase();
}
