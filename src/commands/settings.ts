import { readdir } from "node:fs/promises";
import { resolve } from "node:path";
import { listed } from "../answer/one-line.ts";
import { table } from "../answer/table.ts";
import { businessDayAfter } from "../calendar/business-days.ts";
import { buttonsOf } from "../catalogue/catalogue.ts";
import { type Trial, tryMailbox, tryNameServers, trySender } from "../mail/connect.ts";
import type { EditionFile } from "../reading/editions.ts";
import { type KnownForms, looksOf } from "../reading/page/known-forms.ts";
import { calendarIn } from "../settings/calendar.ts";
import { managedInWords, managingIn } from "../settings/managing.ts";
import { isOnServer } from "../settings/record.ts";
import type { Settings } from "../settings/settings.ts";
import { sharedDomains, sharedDomainsInWords } from "../settings/shared-domains.ts";
import type { Managing } from "../trade/manager.ts";
import { type Need, type PlaceRow, places } from "../trade/place.ts";
import { defineCommand, reasonOf } from "./command.ts";
import { beside, type Configuration, configure, settingsOption } from "./configuration.ts";
import { blobsOf, openPlace, recordName } from "./record.ts";
import { nameServersOf } from "./rules.ts";
import { showForm } from "./show-form.ts";
import { systemClock } from "./system-clock.ts";
import { warningsIn } from "./warnings.ts";
import { aroundMail } from "./wire.ts";

export const settings = defineCommand({
  name: "settings",
  words: [0, 0],
  details:
    "Every fault is printed at once as file:line:column path: what is wrong; the exit code is then 2. Editions are\nheld against the catalogue and against each other, and the sheets of our own are drawn to see that they can be.",
  options: {
    places: { type: "boolean", tells: "only list the places that a field of an edition may mean" },
    domains: { type: "boolean", tells: "only list the address domains that many unrelated people share" },
    form: {
      type: "string",
      takes: "FILE",
      tells: "only show a filled form (PDF) as it is read, place by place",
    },
    connect: {
      type: "boolean",
      tells: "also try mailboxes and sender; a test message goes to the desk itself",
    },
    ...settingsOption,
  },
  async run(_, { settings: given, connect = false, places: onlyPlaces, domains, form }, { out }) {
    if (onlyPlaces) {
      out(placesText());
      return 0;
    }
    const configuration = await configure(given);
    const { file, settings: read, catalogue, editionFiles, forms } = configuration;
    if (form !== undefined) {
      const { lines, isKnown } = await showForm(form, configuration);
      out(lines.join("\n"));
      return isKnown ? 0 : 2;
    }
    if (domains) {
      out(sharedDomains(read.trust).toSorted().join("\n"));
      return 0;
    }
    const { answers } = read;
    out(
      [
        `settings   ${resolve(file)}`,
        `catalogue  ${configuration.catalogueFile}`,
        `glossary   ${configuration.glossaryFile}`,
        `maker      ${catalogue.maker.name}, ${catalogue.maker.email}`,
        `layouts    ${catalogue.layouts.map((l) => `${l.code} (${buttonsOf(l)} of ${l.rows} × ${l.characters})`).join(", ")}`,
        `plates     1 to ${catalogue.plate.widths.length} gangs, ${catalogue.plate.rows} × ${catalogue.plate.characters} a gang`,
        `finishes   ${catalogue.finishes.map((f) => f.name).join(", ")}`,
        `lettering  ${catalogue.lettering.map((l) => l.name).join(", ")}`,
        ...(await Promise.all(editionFiles.map((written) => editionLine(written, forms)))),
        `languages  ${read.languages.join(", ")}`,
        `waiting    ${waitingInWords(read)}`,
        ...managingIn(read).map((one) => `manager    ${managerInWords(one)}`),
        `record     ${recordName(configuration)}`,
        ...read.folders.map((folder) => `letters    from the folder ${beside(file, folder)}`),
        ...read.mailboxes.map(
          ({ name, imap, folder }) => `letters    from ${name}: ${folder} at ${imap.host}:${imap.port}`,
        ),
        `answers    ${answers.folder === undefined ? `by ${answers.send?.smtp.host}` : `into the folder ${beside(file, answers.folder)}`}, from ${answers.from.address}`,
        `shared     ${sharedDomainsInWords(read.trust)}`,
        `day        begins at midnight in ${read.time_zone}; ${dayLetterInWords(read)}`,
        ...(await warningsIn(configuration)).map((what) => `warning    ${what}`),
        "No faults.",
      ].join("\n"),
    );
    return connect ? tryConnections(configuration, out) : 0;
  },
});

const needs: Readonly<Record<Need, string>> = {
  always: "must",
  never: "may",
  "in a plate": "must in a plate",
  "by layout": "must by layout",
};

/** Every place of the table: what a field may mean, on which sheet, and what stands there. */
function placesText(): string {
  const rows = Object.entries<PlaceRow>(places).map(([place, { device, plate, holds, label, tip }]) => [
    place,
    device === undefined ? "" : needs[device],
    plate === undefined ? "" : needs[plate],
    holds,
    // How many characters fit depends on the catalogue.
    [label, ...(tip === undefined ? [] : [tip.replace(/^\{characters\}[^,]*, /, "")])].join("; "),
  ]);
  return [
    table([["means", "on a device sheet", "on a plate sheet", "holds", "what it is"], ...rows], 110),
    "",
    "{face} is a button or gang, or “plate”; {row} a row of its legend. Written so in the field's name and in `means`,",
    "they stand for all of them. `nothing` is for a field that says nothing of the order.",
  ].join("\n");
}

/** What an edition comes to, and whether pages of its sheets can be compared with its blank form. */
async function editionLine({ edition, file }: EditionFile, { blanks }: KnownForms): Promise<string> {
  const { name, title, fields, replacedBy, acceptedUntil, looks, drawn, blank: named } = edition;
  const blank = blanks.get(name);
  const form = drawn || named === undefined ? "the blank form" : `the blank form ${beside(file, named)}`;
  const compared =
    blank === undefined
      ? "no blank form named, so its pages are only searched for pen strokes, text and pictures"
      : `its pages are compared with ${form}`;
  const seen = blank && (await looksOf(blank).catch(() => "not to be rendered"));
  // A sender with an older print would be asked about every line that was moved since.
  const redrawn =
    seen === undefined || looks === undefined || seen === looks
      ? ""
      : `; it is DRAWN OTHERWISE than when it got its name, so that sheets printed before raise questions: give it a new name, and its looks: ${seen}`;
  const replaced = replacedBy === undefined ? "" : `, replaced by ${replacedBy}`;
  const until = acceptedUntil === undefined ? "" : `, accepted until ${acceptedUntil}`;
  return `edition    ${name}: ${title}, ${fields.length} fields${replaced}${until}; ${compared}${redrawn}; ${file}`;
}

/**
 * Tries every server of the settings and prints what came of it. The exit code is 0 if all can be used, otherwise 2.
 */
async function tryConnections(configuration: Configuration, out: (text: string) => void): Promise<number> {
  const { folders, mailboxes, answers } = configuration.settings;
  const around = aroundMail(configuration, { clock: systemClock, log: { info() {}, warn() {} } });
  if (mailboxes.length === 0 && answers.send === undefined) out("Folders only: there is no server to try.");
  const trials: Trial[] = [];
  trials.push(...(await tryRecord(configuration)));
  for (const folder of folders) trials.push(await tryFolder(beside(configuration.file, folder)));
  for (const mailbox of mailboxes) trials.push(...(await tryMailbox(mailbox, around)));
  if (answers.send !== undefined) {
    out(
      `A test message will be sent to ${answers.from.address}, the desk's own address, and to nobody else.`,
    );
    trials.push(...(await trySender(answers.send, answers.from.address, around, answers.grace_seconds)));
  }
  const servers = nameServersOf(configuration.settings);
  if (servers !== undefined) trials.push(await tryNameServers(servers, answers.from.address));
  for (const { ok, says } of trials) out(`${ok ? "ok   " : "FAULT"} ${says}.`);
  return trials.every(({ ok }) => ok) ? 0 : 2;
}

/** Put where the bytes of a record go, to try that. */
const trialBytes = new TextEncoder().encode("a trial of burin settings");

/** Whether the servers of a record answer: that of its database, and that of its bytes. */
async function tryRecord(configuration: Configuration): Promise<Trial[]> {
  const { record, bytes } = configuration.settings;
  const trial = (name: string, attempt: () => Promise<unknown>): Promise<Trial> =>
    attempt().then(
      () => ({ ok: true, says: `${name} answers` }),
      (cause: unknown) => ({ ok: false, says: `${name} cannot be used: ${reasonOf(cause)}` }),
    );
  return [
    ...(isOnServer(record)
      ? [await trial(`the record in ${record}`, async () => (await openPlace(configuration)).db.destroy())]
      : []),
    ...(bytes === undefined
      ? []
      : [
          await trial(`the place for bytes, ${bytes.s3},`, async () =>
            (await blobsOf(configuration)).put(trialBytes),
          ),
        ]),
  ];
}

async function tryFolder(folder: string): Promise<Trial> {
  return readdir(folder).then(
    (names) => ({ ok: true, says: `${folder}: ${names.length} files` }),
    (cause: unknown) => ({ ok: false, says: `${folder} cannot be read: ${reasonOf(cause)}` }),
  );
}

/** Who manages which orders, and what that comes to. */
function managerInWords(one: Managing): string {
  const { manager, waits, summary } = one;
  const does = waits ? "they wait for the manager's word" : "copies of answers";
  const weekly = summary === undefined ? "" : `; a summary each ${summary.weekday} at ${summary.hour}:00`;
  return `${manager.name}, ${manager.address}: ${managedInWords(one)}; ${does}${weekly}`;
}

/** Who is told of each day. */
function dayLetterInWords({ day }: Settings): string {
  if (day === undefined) return "nobody gets a letter about it";
  const people = day.to.map(({ name, address }) => `${name}, ${address}`);
  return `a letter about it at ${day.letter_at} on business days to ${people.join("; ")}`;
}

/** When buyers are reminded, and when nobody works next. */
function waitingInWords({ waiting, time_zone: timeZone }: Settings): string {
  if (waiting === undefined) return "no buyer is reminded of anything";
  const calendar = calendarIn(waiting, timeZone);
  const now = systemClock.now();
  const { country, region, closed, remind_after: days } = waiting;
  const holidays =
    country === undefined
      ? "no public holidays"
      : `public holidays of ${[country, region].filter(Boolean).join("-")}`;
  const next = businessDayAfter(now, 1, calendar);
  return `buyers are reminded after ${listed(days.map(String), 9)} business days; ${holidays}${closed.length === 0 ? "" : `; closed ${closed.join(", ")}`}; next business day ${next ?? "unknown"}`;
}
