import type { Kysely } from "kysely";
import type { Leases } from "../ports/leases.ts";
import type { Tables } from "./tables.ts";

export function leasesOver(db: Kysely<Tables>): Leases {
  return {
    async take(what, holder, now, until) {
      const lease = { holder, until: until.toISOString() };
      // It is one statement, so that of two workers that ask at once only one gets it.
      const taken = await db
        .insertInto("leases")
        .values({ what, ...lease })
        .onConflict((conflict) =>
          conflict
            .column("what")
            .doUpdateSet(lease)
            .where((eb) =>
              eb.or([eb("leases.holder", "=", holder), eb("leases.until", "<=", now.toISOString())]),
            ),
        )
        .returning("what")
        .executeTakeFirst();
      return taken !== undefined;
    },
    async drop(what, holder) {
      await db.deleteFrom("leases").where("what", "=", what).where("holder", "=", holder).execute();
    },
  };
}
