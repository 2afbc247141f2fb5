const firstMs = 500;
const longestMs = 300_000;

/**
 * Milliseconds to wait after this many failures in a row (1 or more): doubling from half a second up to five
 * minutes, and by chance (0 to 1) up to half as long, so that many workers do not come back all at once.
 */
export function backOff(failures: number, chance: number): number {
  const whole = Math.min(longestMs, firstMs * 2 ** (failures - 1));
  return Math.round(whole * (1 - chance / 2));
}
