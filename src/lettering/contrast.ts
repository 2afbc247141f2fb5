/**
 * Contrast ratio of two sRGB colours, `#RRGGBB`, from 1 (the same) to 21 (black on white). It does not matter which
 * of them is the text. Throws for anything not written so. Source: WCAG 2.2, definition of "contrast ratio".
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

/**
 * Whether people would call the sRGB colour red: hue within 20° of red, saturation 0.35 or more, neither
 * nearly black nor pale (lightness 0.15 to 0.7 in HSL). House rule.
 */
export function isRed(colour: string): boolean {
  const [, r, g, b] = /^#(..)(..)(..)$/.exec(colour) ?? [];
  const [red, green, blue] = [r, g, b].map((hex) => Number(`0x${hex}`) / 255) as [number, number, number];
  const [least, most] = [Math.min(red, green, blue), Math.max(red, green, blue)];
  const [spread, lightness] = [most - least, (most + least) / 2];
  if (red < most || lightness < 0.15 || lightness > 0.7) return false;
  const hue = (60 * (green - blue)) / spread;
  return spread / (1 - Math.abs(2 * lightness - 1)) >= 0.35 && Math.abs(hue) <= 20;
}

function linear(hex: string | undefined): number {
  const share = Number(`0x${hex}`) / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
}
