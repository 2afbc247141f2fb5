import type { Sheet } from "../../trade/sheet.ts";
import { at, defineOrderCheck } from "../check.ts";
import { domainsOf, likelierDomain, oddDomains } from "../email-domain.ts";
import { type Sample, subject } from "../sample.ts";

export const emailDomainSlip = defineOrderCheck({
  id: "email-domain-slip",
  title: "The domain of an e-mail address looks mistyped",
  severity: "asks",
  source: { kind: "house" },
  why: "Questions and proofs would go to a stranger or to nobody. A domain one slip from a big provider's, or from the one on the other sheets, is seldom meant.",
  wordings: {
    likelier: {
      says: "The e-mail address {typed} ends in {domain}.",
      fix: "Did you mean {meant}? Confirm it, or that {domain} is right.",
    },
    sister: {
      says: "The e-mail address {typed} ends in {domain}; on other sheets of this order it is {meant}.",
      fix: "Did you mean {meant}? Confirm it, or that {domain} is right.",
    },
  },
  passing: [
    { shows: "one domain throughout", given: ({ completeOrder }) => subject(completeOrder()) },
    { shows: "a provider's", given: (sample) => subject([withEmail(sample, "ines@ymail.com")]) },
    {
      shows: "two firms, and a subdomain",
      given: (sample) =>
        subject([
          sample.plate(),
          withEmail(sample, "joe@larkspur.example"),
          withEmail(sample, "ines@mail.brightwire.example", "1/8"),
        ]),
    },
    {
      shows: "what is no address, which has a check of its own",
      given: (sample) => subject([withEmail(sample, "ines@gmail")]),
    },
  ],
  failing: [
    {
      shows: "two letters swapped",
      given: (sample) => subject([withEmail(sample, "ines@gmial.com")]),
      wording: "likelier",
      says: "The e-mail address ines@gmial.com ends in gmial.com.",
      fix: "Did you mean gmail.com? Confirm it, or that gmial.com is right.",
    },
    {
      shows: "an ending that does not exist",
      given: (sample) => subject([withEmail(sample, "ines@brightwire.con")]),
      wording: "likelier",
      says: "The e-mail address ines@brightwire.con ends in brightwire.con.",
      fix: "Did you mean brightwire.com? Confirm it, or that brightwire.con is right.",
    },
    {
      shows: "a letter left out on one sheet",
      given: (sample) =>
        subject([sample.plate(), sample.deviceAt(1), withEmail(sample, "ines@brightwre.example")]),
      wording: "sister",
      says: "The e-mail address ines@brightwre.example ends in brightwre.example; on other sheets of this order it is brightwire.example.",
      fix: "Did you mean brightwire.example? Confirm it, or that brightwre.example is right.",
    },
  ],
  *find({ order }, _, say) {
    const spots = (sheets: readonly Sheet[]) => sheets.flatMap((sheet) => at(sheet, "contact.email"));
    const sisters = oddDomains(order.sheets);
    const typedBy = Map.groupBy(order.sheets, ({ contact }) => contact.email);
    for (const [typed = "", sheets] of typedBy)
      for (const domain of domainsOf(typed)) {
        const meant = likelierDomain(domain);
        const usual = sisters.find(
          (one) => one.sheet.contact.email === typed && one.domain === domain,
        )?.usual;
        if (meant !== undefined) yield say("likelier", { typed, domain, meant }, spots(sheets));
        else if (usual !== undefined) yield say("sister", { typed, domain, meant: usual }, spots(sheets));
      }
  },
});

function withEmail(sample: Sample, email: string, id = "1/9"): Sheet {
  return sample.aloneDevice({ id, contact: { name: "Ines Calloway", email } });
}
