import { figuresOf } from "../../src/audit/figures.ts";
import type { Period } from "../../src/audit/period.ts";
import type { Audited } from "../../src/trade/audited.ts";

const [from, to] = [new Date("2026-11-09T06:00:00Z"), new Date("2026-11-10T06:00:00Z")];

const slip = {
  order: 1,
  number: "BW-1",
  buyer: "<b@brightwire.example>",
  problem: {
    check: "spelling",
    wording: "unknown",
    severity: "asks",
    verdict: "confirm",
    facts: {},
    spots: [],
  },
  openedAt: new Date("2026-11-09T15:00:00Z"),
  ending: "open",
} as const;

const audited: Audited = {
  letters: [],
  orders: [],
  pairs: [],
  slips: [slip, slip],
  unread: [],
  held: [],
};
const figures = figuresOf(audited, from, to);

/** A day on which one slip came twice, of a buyer whose name would be markup. */
export const slipDay: Period = {
  first: "2026-11-09",
  last: "2026-11-09",
  timeZone: "America/Chicago",
  from,
  businessDays: 1,
  audited,
  figures,
  before: figures,
};
