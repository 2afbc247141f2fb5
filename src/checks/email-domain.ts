import { parse } from "tldts";
import { slipsBetween } from "../orders/near.ts";
import type { Sheet } from "../trade/sheet.ts";
import { addressesIn } from "./mailbox.ts";

/** Providers of mailboxes that many people have. A short list of our own, from memory; add to it freely. */
const providers = (
  "gmail.com googlemail.com yahoo.com ymail.com rocketmail.com hotmail.com outlook.com live.com msn.com icloud.com " +
  "me.com mac.com aol.com comcast.net verizon.net sbcglobal.net bellsouth.net att.net cox.net charter.net " +
  "earthlink.net frontier.com optonline.net windstream.net shaw.ca rogers.com sympatico.ca telus.net videotron.ca " +
  "proton.me protonmail.com zoho.com gmx.com gmx.net fastmail.com mail.com email.com"
).split(" ");

/** Domains that are one slip from a provider's, and right. From memory. */
const others = new Set(["cloud.com"]);

/** Endings that nearly every address has, and that a slip makes another of. */
const endings = ["com", "net", "org", "edu", "gov", "us", "ca"];

/** The domains of the addresses typed, in small letters. */
export function domainsOf(email: string | undefined): string[] {
  const domains = addressesIn(email ?? "").flatMap(
    (one) => /^[^\s@]+@([^\s@]+\.[^\s@.]+)$/.exec(one.toLowerCase())?.[1] ?? [],
  );
  return [...new Set(domains)];
}

/** The domain that was probably meant: a big provider's, or the same with an ending that there is; undefined for others. */
export function likelierDomain(domain: string): string | undefined {
  if (domain.length > 100 || providers.includes(domain) || others.has(domain)) return undefined;
  const near = providers.find((provider) => isNear(domain, provider));
  if (near !== undefined) return near;
  const [, name = "", ending = ""] = /(.+)\.([^.]+)$/.exec(domain) ?? [];
  if (parse(domain).isIcann === true) return undefined;
  const meant = endings.find((one) => one.length > 2 && slipsBetween(ending, one) === 1);
  return meant === undefined ? undefined : `${name}.${meant}`;
}

/** Whether two domains are one slip apart; of short names too many are. */
function isNear(one: string, other: string): boolean {
  const [, name = ""] = /(.+)\.[^.]+$/.exec(other) ?? [];
  if (Math.abs(one.length - other.length) > 1 || name.length < 5) return false;
  // Dots and hyphens are told apart too, where letters and digits alone are compared.
  const [a, b] = [one, other].map((domain) => domain.replaceAll(".", "0").replaceAll("-", "9"));
  return slipsBetween(a ?? "", b ?? "") === 1;
}

/** Sheets whose address has a domain one slip from that of most sheets, with what those have. */
export function oddDomains(sheets: readonly Sheet[]): { sheet: Sheet; domain: string; usual: string }[] {
  const found = sheets.flatMap((sheet) =>
    domainsOf(sheet.contact.email).map((domain) => ({ sheet, domain })),
  );
  const groups = [...Map.groupBy(found, ({ domain }) => domain).entries()].toSorted(
    ([, one], [, other]) => other.length - one.length,
  );
  const [usual = ""] = groups[0] ?? [];
  return groups
    .slice(1)
    .filter(([domain]) => isNear(domain, usual))
    .flatMap(([, members]) => members.map((one) => ({ ...one, usual })));
}
