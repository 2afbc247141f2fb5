import providers from "email-providers/all.json" with { type: "json" };
import about from "email-providers/package.json" with { type: "json" };

/** The settings that say which domains many unrelated people share. */
interface Sharing {
  readonly shared_domains: readonly string[];
  readonly not_shared: readonly string[];
}

/** Public mail providers that the list lacks; from memory. */
const besides = ["fastmail.com", "tutanota.com"];

/**
 * Domains that many people share, so that a proved address says nothing of a company: public mail providers, and what
 * the settings add.
 */
export function sharedDomains({ shared_domains, not_shared }: Sharing): readonly string[] {
  const taken = new Set(not_shared);
  return [...new Set([...providers, ...besides, ...shared_domains])].filter((domain) => !taken.has(domain));
}

/** How many shared domains there are and where they come from. Those of the settings are named. */
export function sharedDomainsInWords(trust: Sharing): string {
  const { shared_domains: added, not_shared: taken } = trust;
  const all = sharedDomains(trust).length;
  const changes = [
    ...(added.length === 0 ? [] : [`${added.length} added (${added.join(", ")})`]),
    ...(taken.length === 0 ? [] : [`${taken.length} taken out (${taken.join(", ")})`]),
  ];
  const by = changes.length === 0 ? "" : `; ${changes.join(", ")} by these settings`;
  return `${all} address domains of public mail providers, from ${about.name} ${about.version}${by}; --domains lists them`;
}
