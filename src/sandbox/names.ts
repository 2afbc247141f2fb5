import { Resolver } from "node:dns/promises";

/** Asks these name servers (`address` or `address:port`), or those of the system if none is named. Gives up soon. */
export function openNames(servers: readonly string[]): Resolver {
  const names = new Resolver({ timeout: 1500, tries: 2 });
  if (servers.length > 0) names.setServers(servers);
  return names;
}
