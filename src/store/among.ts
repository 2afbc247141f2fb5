import { type RawBuilder, sql } from "kysely";

/**
 * Some values behind `in`, as one parameter, however many they are. PostgreSQL unpacks an object, not a list. Not for
 * `not in`, which finds nothing where there are no values.
 */
export function among(values: readonly (number | string)[]): RawBuilder<never> {
  if (values.length === 0) return sql<never>`(NULL)`;
  const asKeys = JSON.stringify(Object.fromEntries(values.map((value) => [value, 0])));
  return typeof values[0] === "number"
    ? sql<never>`(SELECT CAST(key AS bigint) FROM json_each(${asKeys}))`
    : sql<never>`(SELECT key FROM json_each(${asKeys}))`;
}
