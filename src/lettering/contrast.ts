/**
 * Contrast ratio of two sRGB colours, `#RRGGBB`, from 1 (the same) to 21 (black on white); which of them
 * is the text does not matter. Throws for anything not written so.
 * Source: WCAG 2.2, definition of "contrast ratio".
 */
export function contrastRatio(one: string, other: string): number {
  const [darker = 0, lighter = 0] = [luminance(one), luminance(other)].toSorted((a, b) => a - b);
  return (lighter + 0.05) / (darker + 0.05);
}

/** Relative luminance of an sRGB colour, 0 for black to 1 for white. Source: WCAG 2.2, "relative luminance". */
export function luminance(colour: string): number {
  const [, red, green, blue] = /^#(..)(..)(..)$/.exec(colour) ?? [];
  const weighed = 0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue);
  if (Number.isNaN(weighed)) throw new Error(`not a colour written #RRGGBB: ${colour}`);
  return weighed;
}

function linear(hex: string | undefined): number {
  const share = Number(`0x${hex}`) / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
}
