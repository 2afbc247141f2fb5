const firstMs = 500;
const longestMs = 300_000;

/**
 * Milliseconds to wait after so many failures in a row (1 or more). The wait doubles from half a second up to five
 * minutes. Chance (0 to 1) makes it up to half as long again, so that many workers do not come back at once.
 */
export function backOff(failures: number, chance: number): number {
  const whole = Math.min(longestMs, firstMs * 2 ** (failures - 1));
  return Math.round(whole * (1 - chance / 2));
}
