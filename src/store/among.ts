import { type RawBuilder, sql } from "kysely";

/** Some values behind `in`, as one parameter, however many they are. */
export function among(values: readonly (number | string)[]): RawBuilder<never> {
  return sql<never>`(SELECT value FROM json_each(${JSON.stringify(values)}))`;
}
