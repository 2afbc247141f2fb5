import Holidays from "date-holidays";

/** Whose public holidays count. */
export interface Place {
  /** A country by its code of ISO 3166-1, such as US. */
  readonly country: string;
  /** A state or province of it, such as IL. */
  readonly region?: string;
}

/** The dates of a year on which a place has a public holiday, or a day off in place of one. */
export function publicHolidays({ country, region }: Place, year: number): string[] {
  const holidays = region === undefined ? new Holidays(country) : new Holidays(country, region);
  // A day off at the turn of a year stands in either year's list.
  return [year - 1, year, year + 1]
    .flatMap((one) => holidays.getHolidays(one))
    .filter(({ type }) => type === "public")
    .map(({ date }) => date.slice(0, 10))
    .filter((date) => date.startsWith(`${year}-`));
}

export function isCountry(country: string): boolean {
  return Object.hasOwn(new Holidays().getCountries(), country);
}

export function isRegion(country: string, region: string): boolean {
  return Object.hasOwn(new Holidays().getStates(country) ?? {}, region);
}
