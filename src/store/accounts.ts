import type { Kysely, Selectable } from "kysely";
import type { Account, Accounts, Role } from "../ports/accounts.ts";
import { writeHappening } from "./events.ts";
import { inTurn } from "./in-turn.ts";
import type { Tables } from "./tables.ts";

/** Who may come in to the desk's page. Passwords are here as hashes, and sessions as hashes of their secrets. */
export function accountsOver(db: Kysely<Tables>): Accounts {
  return {
    find: async (user) => {
      const row = await db.selectFrom("accounts").selectAll().where("user", "=", user).executeTakeFirst();
      return row && accountOf(row);
    },
    all: async () => (await db.selectFrom("accounts").selectAll().orderBy("user").execute()).map(accountOf),
    save: (account, by, now) =>
      inTurn(db, async (tx) => {
        const { user, name, role, password, isShut } = account;
        const row = { user, name, role, password: password ?? null, is_shut: isShut ? 1 : 0 };
        const { user: _user, ...rest } = row;
        await tx
          .insertInto("accounts")
          .values(row)
          .onConflict((conflict) => conflict.column("user").doUpdateSet(rest))
          .execute();
        await tx.deleteFrom("sessions").where("user", "=", user).execute();
        await writeHappening(tx, {
          at: now,
          actor: by,
          subject: "account",
          subject_id: null,
          what: isShut ? "shut" : "saved",
          words: `${user}: ${name}, ${role}`,
        });
      }),
    begin: async ({ user, until }, hash, now) => {
      await db.deleteFrom("sessions").where("until", "<=", now.toISOString()).execute();
      await db.insertInto("sessions").values({ hash, user, until: until.toISOString() }).execute();
    },
    of: async (hash, now) => {
      const row = await db
        .selectFrom("sessions")
        .innerJoin("accounts", "accounts.user", "sessions.user")
        .selectAll("accounts")
        .where("sessions.hash", "=", hash)
        .where("sessions.until", ">", now.toISOString())
        .where("accounts.is_shut", "=", 0)
        .executeTakeFirst();
      return row && accountOf(row);
    },
    end: async (hash) => {
      await db.deleteFrom("sessions").where("hash", "=", hash).execute();
    },
  };
}

function accountOf({ user, name, role, password, is_shut }: Selectable<Tables["accounts"]>): Account {
  return {
    user,
    name,
    role: role as Role,
    ...(password === null ? {} : { password }),
    isShut: is_shut === 1,
  };
}
