import { projectKey } from "../lettering/glossary.ts";
import type { Managed } from "../trade/managed.ts";
import type { Order } from "../trade/order.ts";

/** Who manages an order of this buyer: the first whom the settings name for it. Undefined if nobody does. */
export function managedBy(order: Order, buyer: string, all: readonly Managed[]): Managed | undefined {
  const projects = new Set(
    order.sheets.flatMap(({ project }) => (project === undefined ? [] : projectKey(project))),
  );
  return all.find(
    ({ project, buyer: whose, stationsAbove }) =>
      (project === undefined || projects.has(projectKey(project))) &&
      (whose === undefined || buyer === whose || buyer.endsWith(`@${whose}`)) &&
      (stationsAbove === undefined || order.stations.length > stationsAbove),
  );
}
