import { isPlaceholder } from "../../orders/placeholder.ts";
import { isShortFor, regionOf, regionsOfPostcode } from "../../orders/regions.ts";
import type { DeviceSheet } from "../../trade/sheet.ts";
import { at, defineSheetCheck } from "../check.ts";
import { billTo, type Sample, unprinted } from "../sample.ts";

const { postcode: _postcode, ...noPostcode } = billTo;
const withoutPostcode = ({ device }: Sample) => device({ billTo: { ...noPostcode, state: "ZZ" } });

export const postcodeStateMismatch = defineSheetCheck({
  id: "postcode-state-mismatch",
  title: "The postal code lies in another state",
  severity: "stops",
  waivable: true,
  source: { kind: "standard", name: "USPS Publication 28, Appendix B; Canada Post Addressing Guidelines" },
  why: "One of the two is mistyped, and the parcel follows the postal code.",
  wordings: {
    differs: {
      says: "{which} address: {postcode} lies in {there|or}, but the state is “{state}”.",
      fix: "Correct whichever is wrong.",
    },
    postcode: {
      says: "{which} address: “{postcode}” is not a ZIP or a Canadian postal code.",
      fix: "Write it as in 60607, 60607-1234 or K1A 0B1.",
    },
    state: {
      says: "{which} address: “{state}” is not a US state or a Canadian province.",
      fix: "Write its two letters, as in IL or ON; or reply that the address lies elsewhere.",
      severity: "asks",
    },
  },
  passing: [
    { shows: "a ZIP of the state", given: (sample) => billedTo(sample, "IL", "60607") },
    {
      shows: "a state by its name and a ZIP+4",
      given: (sample) => billedTo(sample, "illinois", "60607-1234"),
    },
    {
      shows: "an older abbreviation of the ZIP's state",
      given: (sample) => billedTo(sample, "Ill.", "60607"),
    },
    { shows: "a Canadian address", given: (sample) => billedTo(sample, "Québec", "h2y 1c6") },
    { shows: "a letter that two territories share", given: (sample) => billedTo(sample, "NU", "X0A 0H0") },
  ],
  failing: [
    {
      shows: "a ZIP of the state next door",
      given: (sample) => billedTo(sample, "WI", "60607"),
      wording: "differs",
      says: "Bill-to address: 60607 lies in IL, but the state is “WI”.",
    },
    {
      shows: "a postal code of another province",
      given: (sample) => billedTo(sample, "ON", "H2Y 1C6"),
      wording: "differs",
      says: "Bill-to address: H2Y 1C6 lies in QC, but the state is “ON”.",
    },
    {
      shows: "no state there is, on a form without ZIP",
      given: (sample) => unprinted(withoutPostcode(sample), "bill.postcode"),
      wording: "state",
      says: "Bill-to address: “ZZ” is not a US state or a Canadian province.",
    },
    {
      shows: "a ZIP of four digits",
      given: (sample) => billedTo(sample, "IL", "6060"),
      wording: "postcode",
      says: "Bill-to address: “6060” is not a ZIP or a Canadian postal code.",
    },
    {
      shows: "a ZIP that no state has",
      given: (sample) => billedTo(sample, "IL", "00012"),
      wording: "postcode",
      says: "Bill-to address: “00012” is not a ZIP or a Canadian postal code.",
    },
    {
      shows: "an abbreviation of another state",
      given: (sample) => billedTo(sample, "Calif.", "60607"),
      wording: "state",
      says: "Bill-to address: “Calif.” is not a US state or a Canadian province.",
    },
  ],
  *find(sheet, _catalogue, say) {
    const addresses = [
      { which: "Bill-to", key: "bill", address: sheet.billTo },
      { which: "Ship-to", key: "ship", address: sheet.shipSame ? {} : sheet.shipTo },
    ] as const;
    for (const { which, key, address } of addresses) {
      const { state, postcode } = address;
      if (state === undefined || isPlaceholder(state)) continue;
      const there = regionsOfPostcode(postcode ?? "");
      const region = regionOf(state) ?? there.find((code) => isShortFor(state, code));
      if (region === undefined) yield say("state", { which, state }, at(sheet, `${key}.state`));
      else if (postcode === undefined || isPlaceholder(postcode)) continue;
      else if (there.length === 0) yield say("postcode", { which, postcode }, at(sheet, `${key}.postcode`));
      else if (!there.includes(region))
        yield say("differs", { which, postcode, state, there }, at(sheet, `${key}.postcode`, `${key}.state`));
    }
  },
});

function billedTo({ device }: Sample, state: string, postcode: string): DeviceSheet {
  return device({ billTo: { ...billTo, state, postcode } });
}
