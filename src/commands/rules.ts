import type { Rules } from "../intake/desk.ts";
import { calendarIn } from "../settings/calendar.ts";
import { managingIn } from "../settings/managing.ts";
import type { Settings } from "../settings/settings.ts";
import { sharedDomains } from "../settings/shared-domains.ts";
import { packagesIn, removePackage } from "../store/package-folder.ts";
import { beside, type Configuration } from "./configuration.ts";

/** Where browsers find the page. */
export function addressOf({ address, host, port }: NonNullable<Settings["desk"]>): string {
  return address ?? `http://${host.includes(":") ? `[${host}]` : host}:${port}`;
}

/** Whose orders are released by themselves, and where packages go. */
export function releasingOf({
  file,
  settings: { release },
}: Configuration): Pick<Rules, "releasing" | "packages"> {
  if (release === undefined) return {};
  const packages = packagesIn(beside(file, release.folder));
  if (release.by_itself === undefined) return { packages };
  const { after_hours: afterHours, buyers } = release.by_itself;
  return { packages, releasing: { afterHours, buyers, put: packages } };
}

/** When letters are erased by themselves, and where packages lie that go with them. */
export function erasingOf({
  file,
  settings: { release, erase_after_days: afterDays },
}: Configuration): Pick<Rules, "erasing"> {
  return {
    erasing: {
      ...(afterDays === undefined ? {} : { afterDays }),
      ...(release === undefined
        ? {}
        : { remove: (name: string) => removePackage(beside(file, release.folder), name) }),
    },
  };
}

/** What the settings say of whom a desk trusts, answers and tells. */
export function rulesOf(settings: Settings): Rules {
  const { from, also, most_per_hour, most_per_day } = settings.answers;
  const { grace_seconds, lease_seconds, patience_seconds } = settings.answers;
  const { authority, received_lines, known, staff } = settings.trust;
  const nameServers = nameServersOf(settings);
  return {
    ours: [from.address, ...also],
    returnPathWritten: settings.mailboxes.length > 0,
    ...(authority === undefined ? {} : { authority }),
    ...(nameServers === undefined ? {} : { nameServers }),
    receivedLines: received_lines,
    ...(settings.notice === undefined ? {} : { notice: settings.notice.to }),
    ...(settings.day === undefined
      ? {}
      : {
          dayLetter: {
            at: settings.day.letter_at,
            to: settings.day.to,
            calendar: calendarIn(settings.waiting, settings.time_zone),
          },
        }),
    ...(settings.desk?.link_days === undefined
      ? {}
      : { links: { address: addressOf(settings.desk), days: settings.desk.link_days } }),
    ...(settings.release?.room === undefined ? {} : { room: settings.release.room }),
    ...(settings.waiting === undefined
      ? {}
      : {
          reminding: {
            ...calendarIn(settings.waiting, settings.time_zone),
            remindAfter: settings.waiting.remind_after,
          },
        }),
    sharedDomains: sharedDomains(settings.trust),
    known,
    staff,
    managing: managingIn(settings),
    mostAnswers: {
      toOne: most_per_hour.to_one,
      toAll: most_per_hour.to_all,
      toOneADay: most_per_day.to_one,
      inThreadADay: most_per_day.in_thread,
    },
    lease: lease_seconds,
    patience: patience_seconds,
    grace: grace_seconds,
  };
}

/**
 * The name servers to ask about senders. An empty list means those of the system. Undefined if none is to be asked.
 */
export function nameServersOf({
  trust: { authority, name_servers },
}: Settings): readonly string[] | undefined {
  if (authority !== undefined || name_servers === undefined || name_servers === "none") return undefined;
  return name_servers === "system" ? [] : name_servers;
}
