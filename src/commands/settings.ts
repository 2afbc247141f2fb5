import { readdir } from "node:fs/promises";
import { buttonsOf, type Catalogue } from "../catalogue/catalogue.ts";
import { neverAsked } from "../checks/required.ts";
import { blankSheet } from "../drawing/blank-sheet.ts";
import { type Trial, tryMailbox, tryNameServers, trySender } from "../mail/connect.ts";
import type { Edition } from "../reading/edition.ts";
import type { EditionFile } from "../reading/editions.ts";
import { type KnownForms, looksOf } from "../reading/page/known-forms.ts";
import { sharedDomainsInWords } from "../settings/shared-domains.ts";
import { type Need, type PlaceRow, places } from "../trade/place.ts";
import { faultIn, faultLine } from "../yaml/yaml.ts";
import { defineCommand, reasonOf } from "./command.ts";
import { table } from "./table.ts";
import {
  aroundMail,
  beside,
  type Configuration,
  configure,
  nameServersOf,
  settingsOption,
  systemClock,
} from "./wire.ts";

export const settings = defineCommand({
  name: "settings",
  takes: "",
  words: [0, 0],
  summary: "Reads the settings, the catalogue and the editions, and says what they come to.",
  details:
    "Every fault is printed at once as file:line:column path: what is wrong; the exit code is then 2. Editions are\nheld against the catalogue and against each other, and the sheets of our own are drawn to see that they can be.",
  options: {
    places: { type: "boolean", tells: "only list the places that a field of an edition may mean" },
    connect: {
      type: "boolean",
      tells: "also try mailboxes and sender; a test message goes to the desk itself",
    },
    ...settingsOption,
  },
  async run(_, { settings: given, connect = false, places: list = false }, { out }) {
    if (list) {
      out(placesText());
      return 0;
    }
    const configuration = await configure(given, reasonNotDrawn);
    const { file, settings: read, catalogue, editions, editionFiles, forms } = configuration;
    out(
      [
        `settings   ${file}`,
        `maker      ${catalogue.maker.name}, ${catalogue.maker.email}`,
        `layouts    ${catalogue.layouts.map((l) => `${l.code} (${buttonsOf(l)} of ${l.rows} × ${l.characters})`).join(", ")}`,
        `plates     1 to ${catalogue.plate.widths.length} gangs, ${catalogue.plate.rows} × ${catalogue.plate.characters} a gang`,
        `finishes   ${catalogue.finishes.map((f) => f.name).join(", ")}`,
        `lettering  ${catalogue.lettering.map((l) => l.name).join(", ")}`,
        ...(await Promise.all(editions.map((edition) => editionLine(edition, forms)))),
        `languages  ${read.languages.join(", ")}`,
        `record     ${read.record}`,
        ...read.folders.map((folder) => `letters    from the folder ${folder}`),
        ...read.mailboxes.map(
          ({ name, imap, folder }) => `letters    from ${name}: ${folder} at ${imap.host}:${imap.port}`,
        ),
        `answers    ${read.answers.folder ?? `by ${read.answers.send?.smtp.host}`}, from ${read.answers.from.address}`,
        `shared     ${sharedDomainsInWords(read.trust)}`,
        `day        begins at midnight in ${read.time_zone}`,
        ...editionFiles.flatMap((written) => warningOf(written, catalogue)),
        "No faults.",
      ].join("\n"),
    );
    return connect ? tryConnections(configuration, out) : 0;
  },
});

/** Why the blank sheet of an edition cannot be drawn; undefined when it can. */
function reasonNotDrawn(edition: Edition, catalogue: Catalogue): Promise<string | undefined> {
  return blankSheet(edition, catalogue).then(
    () => undefined,
    (cause: unknown) => `cannot be drawn: ${reasonOf(cause)}`,
  );
}

/** What an edition in use does not ask for although it is needed. */
function warningOf({ edition, file, text }: EditionFile, catalogue: Catalogue): string[] {
  const isUsed = edition.replacedBy === undefined || edition.acceptedUntil !== undefined;
  const never = isUsed ? neverAsked(edition, catalogue) : [];
  if (never.length === 0) return [];
  const what = `has no field for ${never.join(", ")}, so nobody is asked for it`;
  return [`warning    ${faultLine(faultIn(text, file, ["fields"], what))}`];
}

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
async function editionLine(edition: Edition, { blanks }: KnownForms): Promise<string> {
  const { name, title, fields, replacedBy, acceptedUntil, looks } = edition;
  const blank = blanks.get(name);
  const compared =
    blank === undefined
      ? "no blank form named, so its pages are only searched for pen strokes, text and pictures"
      : "its pages are compared with the blank form";
  const seen = blank && (await looksOf(blank).catch(() => "not to be rendered"));
  // Whoever has an older print would be asked about every line that was moved since.
  const redrawn =
    seen === undefined || looks === undefined || seen === looks
      ? ""
      : `; it is DRAWN OTHERWISE than when it got its name, so that sheets printed before raise questions: give it a new name, and its looks: ${seen}`;
  const replaced = replacedBy === undefined ? "" : `, replaced by ${replacedBy}`;
  const until = acceptedUntil === undefined ? "" : `, accepted until ${acceptedUntil}`;
  return `edition    ${name}: ${title}, ${fields.length} fields${replaced}${until}; ${compared}${redrawn}`;
}

/** Tries every server of the settings and says of each what came of it: 0 when all can be used, otherwise 2. */
async function tryConnections(configuration: Configuration, out: (text: string) => void): Promise<number> {
  const { folders, mailboxes, answers } = configuration.settings;
  const around = aroundMail(configuration, { clock: systemClock, log: { info() {}, warn() {} } });
  if (mailboxes.length === 0 && answers.send === undefined) out("Folders only: there is no server to try.");
  const trials: Trial[] = [];
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

async function tryFolder(folder: string): Promise<Trial> {
  return readdir(folder).then(
    (names) => ({ ok: true, says: `${folder}: ${names.length} files` }),
    (cause: unknown) => ({ ok: false, says: `${folder} cannot be read: ${reasonOf(cause)}` }),
  );
}
