import type { Managing } from "../trade/manager.ts";
import type { Settings } from "./settings.ts";

/** Who manages which orders, as the settings say. */
export function managingIn({ projects }: Pick<Settings, "projects">): Managing[] {
  return projects.map(({ project, buyer, stations_above: stationsAbove, manager, waits, summary }) => ({
    ...(project === undefined ? {} : { project }),
    ...(buyer === undefined ? {} : { buyer }),
    ...(stationsAbove === undefined ? {} : { stationsAbove }),
    manager,
    waits,
    ...(summary === undefined ? {} : { summary }),
  }));
}

/** Which orders somebody manages: "project Larkspur Library of brightwire.example above 12 stations". */
export function managedInWords({ project, buyer, stationsAbove }: Managing): string {
  return [
    project === undefined ? "orders" : `project ${project}`,
    ...(buyer === undefined ? [] : [`of ${buyer}`]),
    ...(stationsAbove === undefined ? [] : [`above ${stationsAbove} stations`]),
  ].join(" ");
}
