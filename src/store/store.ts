import type { Kysely } from "kysely";
import type { Mailboxes, People, Store } from "../ports/store.ts";
import { accountsOver } from "./accounts.ts";
import { dropAlarm, takeAlarms } from "./alarms.ts";
import { answersOver } from "./answers.ts";
import { readAudited } from "./audited.ts";
import { type Bell, silentBell } from "./bell.ts";
import type { Blobs } from "./blobs.ts";
import { buyersOver } from "./buyers.ts";
import { isPostgres, timeOf } from "./dialect.ts";
import { erasuresOver } from "./erasures.ts";
import { dropNotice, lettersForPerson, takeNotice } from "./for-person.ts";
import { leasesOver } from "./leases.ts";
import { lettersOver } from "./letters.ts";
import { isMigrated, migrate } from "./migrations.ts";
import { ordersOver } from "./orders.ts";
import { readOrdersForPerson } from "./read.ts";
import type { Tables } from "./tables.ts";
import { verifyRecord } from "./verify.ts";

/** The record over a database and a place for bytes. Brings the tables up to date first, as of `now`. */
export async function openStore(
  db: Kysely<Tables>,
  blobs: Blobs,
  now?: Date,
  bell: Bell = silentBell(),
): Promise<Store> {
  await migrate(db, now);
  return storeOver(db, blobs, bell);
}

/** A record to read, as it is. Throws where it is of another version of the program. */
export async function readStore(db: Kysely<Tables>, blobs: Blobs): Promise<Store> {
  if (!(await isMigrated(db)))
    throw new Error("the record is of another version of Burin; `burin work` brings an older one up to date");
  return storeOver(db, blobs, silentBell());
}

function storeOver(db: Kysely<Tables>, blobs: Blobs, bell: Bell): Store {
  return {
    letters: lettersOver(db, blobs, bell),
    answers: answersOver(db, blobs),
    buyers: buyersOver(db),
    orders: ordersOver(db, blobs),
    people: peopleOver(db),
    mailboxes: mailboxesOver(db),
    leases: leasesOver(db),
    accounts: accountsOver(db),
    erasures: erasuresOver(db, blobs),
    audited: (from, to) => readAudited(db, from, to),
    verify: () => verifyRecord(db),
    room: () => blobs.room(),
    ...(isPostgres(db) ? { time: () => timeOf(db) } : {}),
    async close() {
      bell.close();
      await db.destroy();
    },
  };
}

function peopleOver(db: Kysely<Tables>): People {
  return {
    waiting: (now, most) => lettersForPerson(db, now, most),
    orders: (most) => readOrdersForPerson(db, most),
    takeNotice: (now, told) => takeNotice(db, now, told),
    takeAlarms: (now) => takeAlarms(db, now),
    dropAlarm: (letter) => dropAlarm(db, letter),
    dropNotice: (taken) => dropNotice(db, taken),
  };
}

function mailboxesOver(db: Kysely<Tables>): Mailboxes {
  return {
    markOf: async (mailbox) =>
      db.selectFrom("marks").select(["validity", "uid"]).where("mailbox", "=", mailbox).executeTakeFirst(),
    setMark: async (mailbox, mark) => {
      await db
        .insertInto("marks")
        .values({ mailbox, ...mark })
        .onConflict((conflict) => conflict.column("mailbox").doUpdateSet(mark))
        .execute();
    },
  };
}
