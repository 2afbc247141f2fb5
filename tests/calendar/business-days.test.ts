import { addBusinessDays, differenceInBusinessDays } from "date-fns";
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { businessDayAfter, businessDaysBetween, calendarOf } from "../../src/calendar/business-days.ts";
import { isCountry, isRegion, publicHolidays } from "../../src/calendar/holidays.ts";

const timeZone = "America/Chicago";
const plain = calendarOf({ timeZone });
const desk = calendarOf({
  timeZone,
  place: { country: "US" },
  closed: [{ from: "2026-12-24", to: "2027-01-03" }],
});
const noon = (date: string): Date => new Date(`${date}T18:00:00Z`);

/**
 * Days on which federal offices are closed: 5 U.S.C. 6103, and the list "Federal Holidays" of the US Office of Personnel
 * Management (its dates from memory). A holiday on a Saturday is observed on the Friday before, one on a Sunday on the
 * Monday after.
 */
const observed: Readonly<Record<number, readonly string[]>> = {
  2026: [
    "2026-01-01",
    "2026-01-19",
    "2026-02-16",
    "2026-05-25",
    "2026-06-19",
    "2026-07-03",
    "2026-09-07",
    "2026-10-12",
    "2026-11-11",
    "2026-11-26",
    "2026-12-25",
  ],
  2027: [
    "2027-01-01",
    "2027-01-18",
    "2027-02-15",
    "2027-05-31",
    "2027-06-18",
    "2027-07-05",
    "2027-09-06",
    "2027-10-11",
    "2027-11-11",
    "2027-11-25",
    "2027-12-24",
    "2027-12-31",
  ],
};

describe("the public holidays of the United States", () => {
  test.each([2026, 2027])("of %i close exactly the weekdays of the published list", (year) => {
    const open = calendarOf({ timeZone, place: { country: "US" } });
    const days = Array.from({ length: 365 }, (_, i) =>
      new Date(Date.UTC(year, 0, 1 + i)).toISOString().slice(0, 10),
    );
    expect(days.filter((day) => plain.isOpen(day) && !open.isOpen(day))).toEqual(observed[year]);
  });

  test("of a state are added to them", () => {
    expect(publicHolidays({ country: "US", region: "IL" }, 2026)).toContain("2026-02-12");
    expect(publicHolidays({ country: "US" }, 2026)).not.toContain("2026-02-12");
  });

  test("a country or region that is not known is told from one that is", () => {
    expect([isCountry("US"), isCountry("XX"), isCountry("toString")]).toEqual([true, false, false]);
    expect([isRegion("US", "IL"), isRegion("US", "ZZ"), isRegion("XX", "IL")]).toEqual([true, false, false]);
  });
});

test("weekends are counted as a general-purpose library counts them", () => {
  const day = fc.date({ min: new Date("2024-01-01"), max: new Date("2030-01-01"), noInvalidDate: true });
  const utc = calendarOf({ timeZone: "UTC" });
  // date-fns reckons in the zone of the machine, so both are given noons.
  const local = (date: string): Date => new Date(`${date}T12:00:00`);
  fc.assert(
    fc.property(day, fc.integer({ min: 1, max: 60 }), (moment, days) => {
      const date = moment.toISOString().slice(0, 10);
      const theirs = addBusinessDays(local(date), days);
      const their = `${theirs.getFullYear()}-${`${theirs.getMonth() + 1}`.padStart(2, "0")}-${`${theirs.getDate()}`.padStart(2, "0")}`;
      expect(businessDayAfter(noon(date), days, utc)).toBe(their);
      expect(businessDaysBetween(noon(date), noon(their), utc)).toBe(days);
      // From a weekend they count the first weekday only once it is over.
      if (utc.isOpen(date)) expect(differenceInBusinessDays(theirs, local(date))).toBe(days);
    }),
  );
});

describe("a day", () => {
  test("is that of the desk's own time zone", () => {
    // 23:30 on Thursday in Chicago is Friday in UTC.
    expect(businessDaysBetween(new Date("2026-11-06T05:30:00Z"), noon("2026-11-06"), plain)).toBe(1);
    expect(businessDaysBetween(noon("2026-11-06"), new Date("2026-11-10T05:30:00Z"), plain)).toBe(1);
  });

  test.each([
    // One minute to midnight on a Thursday, before a weekend on which the clocks change.
    ["2026-03-06T05:59:00Z", "2026-03-09"],
    ["2026-10-30T04:59:00Z", "2026-11-02"],
  ])("is one, whatever the clocks do: %s", (moment, monday) => {
    expect(businessDayAfter(new Date(moment), 2, plain)).toBe(monday);
  });

  test("on which the maker is closed counts no more than a holiday", () => {
    expect(businessDayAfter(noon("2026-12-23"), 1, desk)).toBe("2027-01-04");
    expect(businessDaysBetween(noon("2026-11-25"), noon("2026-11-30"), desk)).toBe(2);
  });

  test("before the moment itself counts nothing", () => {
    expect(businessDaysBetween(noon("2026-11-06"), noon("2026-11-02"), plain)).toBe(0);
  });

  test("does not come where the desk is closed for good", () => {
    const shut = calendarOf({ timeZone, closed: [{ from: "2000-01-01", to: "2999-12-31" }] });
    expect(businessDayAfter(noon("2026-11-06"), 1, shut)).toBe(undefined);
  });
});
