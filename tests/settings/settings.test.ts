import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { parse } from "yaml";
import { calendarIn } from "../../src/settings/calendar.ts";
import { managingIn } from "../../src/settings/managing.ts";
import { readSettings, settingsSchema } from "../../src/settings/settings.ts";
import { sharedDomains, sharedDomainsInWords } from "../../src/settings/shared-domains.ts";
import { faultLine } from "../../src/yaml/yaml.ts";

const text = readFileSync("config/burin.yaml", "utf8");

test("the settings that come with the project have no fault", () => {
  expect(readSettings(text, "burin.yaml").ok).toBe(true);
});

test("so has the sample for a real mailbox, and the secrets that it names are in the sample environment", () => {
  const sample = readFileSync("config/burin-mail.yaml", "utf8");
  const read = readSettings(sample, "burin-mail.yaml");
  expect(read.ok ? [] : read.faults.map(faultLine)).toEqual([]);
  const environment = readFileSync("config/burin.env.example", "utf8");
  const named = [...sample.matchAll(/_env: (\w+)/g)].map(([, name]) => name ?? "");
  expect(named.length).toBeGreaterThan(0);
  for (const name of named) expect(environment).toContain(`${name}=`);
});

interface Shape {
  readonly at: readonly string[];
  readonly keys: readonly string[];
}

/** Every object of a schema: where it stands and its keys. */
function shapesIn(schema: unknown, at: readonly string[] = []): Shape[] {
  const { shape, def } = schema as { shape?: Record<string, unknown>; def: Record<string, unknown> };
  const inner = [def["innerType"], def["element"], def["in"]].filter((one) => one !== undefined);
  if (shape === undefined) return inner.flatMap((one) => shapesIn(one, at));
  const deeper = Object.entries(shape).flatMap(([key, one]) => shapesIn(one, [...at, key]));
  return [{ at, keys: Object.keys(shape) }, ...deeper];
}

/** The keys that a value has at a place, of all items of a list. */
function keysAt(value: unknown, [key, ...rest]: readonly string[]): string[] {
  const here = [value].flat().filter((one): one is Record<string, unknown> => typeof one === "object");
  return here.flatMap((one) => (key === undefined ? Object.keys(one) : keysAt(one[key], rest)));
}

test("the sample for a real mailbox shows every setting there is, each with a value that fits", () => {
  // With what stands behind a “# ” let in, alternatives stand side by side.
  const sample = readFileSync("config/burin-mail.yaml", "utf8").replaceAll(/^( *)# ( *[\w-]+: )/gm, "$1$2");
  const shapes = Map.groupBy(shapesIn(settingsSchema), ({ keys }) => keys.join());
  expect(shapes.size).toBeGreaterThan(10);
  // Servers have the same keys wherever they stand: it is enough to show each once.
  const missing = [...shapes.values()].flatMap((same) => {
    const shown = new Set(same.flatMap(({ at }) => keysAt(parse(sample), at)));
    return same.flatMap(({ at, keys }) => keys.filter((key) => !shown.has(key)).map((key) => [...at, key]));
  });
  expect(missing.map((path) => path.join("."))).toEqual([]);
  const read = readSettings(sample, "burin-mail.yaml");
  expect(read.ok ? [] : read.faults.map(({ path, what }) => `${path}: ${what}`)).toEqual([
    "record_password_file: record_password_env or record_password_file, not both",
    "bytes: needs secret_key_env or secret_key_file",
    "mailboxes.0.imap: needs exactly one of password_env, password_file and oauth",
    expect.stringMatching(/client_secret_file: client_secret_env or client_secret_file, not both/),
    expect.stringMatching(/refresh_token_file: refresh_token_env or refresh_token_file, not both/),
    "answers: needs either folder or send",
    "desk.sign_in: needs client_secret_env or client_secret_file",
  ]);
});

test("a time zone that is none is told", () => {
  const read = readSettings(text.replace("America/Chicago", "Mars/Olympus"), "burin.yaml");
  expect(read.ok ? [] : read.faults.map(faultLine)).toEqual([
    expect.stringMatching(/^burin\.yaml:\d+:1 time_zone: not a time zone/),
  ]);
});

test.each([
  [
    "a desk that cannot tell who writes",
    (sample: string) => sample.replace(/^ {2}authority:.*$/m, ""),
    /trust: needs authority or name_servers/,
  ],
  [
    "a password of the record from two places",
    (sample: string) =>
      `${sample}\nrecord_password_env: RECORD_PASSWORD\nrecord_password_file: record-password\n`,
    /^burin-mail\.yaml:\d+:1 record_password_file: record_password_env or record_password_file, not both$/,
  ],
  [
    "a name server that is none",
    (sample: string) => sample.replace(/^ {2}authority:.*$/m, "  name_servers: [ns.quillgate.example]"),
    /not an IP address/,
  ],
  [
    "a port that is none",
    (sample: string) => sample.replace(/^ {2}authority:.*$/m, "  name_servers: ['192.0.2.53:99999']"),
    /not an IP address/,
  ],
  [
    "a notice that the desk would read itself",
    (sample: string) => sample.replace("to: service@", "to: stations@"),
    /notice\.to: is an address of this desk itself/,
  ],
  [
    "a letter about a day that the desk would read itself",
    (sample: string) => sample.replace("address: odile@", "address: Orders@"),
    /day\.to: one of them is an address of this desk itself/,
  ],
  [
    "an hour that is none",
    (sample: string) => sample.replace('letter_at: "07:00"', 'letter_at: "7 am"'),
    /day\.letter_at: not a time such as 07:00/,
  ],
])("%s is a fault", (_, change, fault) => {
  const read = readSettings(change(readFileSync("config/burin-mail.yaml", "utf8")), "burin-mail.yaml");
  expect(read.ok ? [] : read.faults.map(faultLine)).toEqual([expect.stringMatching(fault)]);
});

test.each(["system", "none", "[192.0.2.53]", "['2001:db8::53', '192.0.2.53:5353']"])(
  "name servers may be %s",
  (servers) => {
    const sample = readFileSync("config/burin-mail.yaml", "utf8").replace(
      /^ {2}authority:.*$/m,
      `  name_servers: ${servers}`,
    );
    expect(readSettings(sample, "burin-mail.yaml").ok).toBe(true);
  },
);

test("legends are American English unless other languages are named", () => {
  const languages = (given: string) => {
    const read = readSettings(`${given}\n${text}`, "burin.yaml");
    return read.ok ? read.value.languages : read.faults.map(faultLine);
  };
  expect(languages("")).toEqual(["en-US"]);
  expect(languages("languages: [en-CA, fr]")).toEqual(["en-CA", "fr"]);
  expect(languages("languages: [en-US, de]")).toEqual([
    "burin.yaml:1:20 languages.1: no dictionary of this language comes with Burin; there are en-US, en-GB, en-CA, fr, es",
  ]);
  expect(languages("languages: []")).toEqual(["burin.yaml:1:1 languages: needs a language"]);
});

test("public mail providers are shared by themselves, and the settings add and take away", () => {
  const read = readSettings(
    `${text}\ntrust: { shared_domains: [Freemail.example], not_shared: [gmx.de], known: [Ines@brightwire.example, oakmoor.example], staff: [Sam@quillgate.example] }`,
    "burin.yaml",
  );
  if (!read.ok) throw new Error(read.faults.map(faultLine).join("\n"));
  const { trust } = read.value;
  const shared = sharedDomains(trust);
  expect(shared).toEqual(expect.arrayContaining(["gmail.com", "yahoo.com", "orange.fr", "freemail.example"]));
  expect(shared).not.toContain("gmx.de");
  expect(shared).not.toContain("brightwire.example");
  expect(sharedDomainsInWords(trust)).toMatch(
    new RegExp(
      `^${shared.length} address domains of public mail providers, from email-providers [0-9.]+; 1 added \\(freemail.example\\), 1 taken out \\(gmx.de\\) by these settings; --domains lists them$`,
    ),
  );
  expect([trust.known, trust.staff]).toEqual([
    ["ines@brightwire.example", "oakmoor.example"],
    ["sam@quillgate.example"],
  ]);
});

test("limits and patience have values of their own", () => {
  const read = readSettings(text, "burin.yaml");
  expect(read.ok ? read.value.answers : read.faults).toMatchObject({
    most_per_hour: { to_one: 20, to_all: 600 },
    most_per_day: { to_one: 100, in_thread: 20 },
    // RFC 5321 §4.5.3.2.6
    patience_seconds: 600,
  });
});

test.each([
  ["remind_after: [5, 2]", /remind_after: each must be later/],
  ["remind_after: []", /remind_after/],
  ["country: XX", /country: not a country/],
  ["{ country: US, region: ZZ }", /region: not a region/],
  ["{ region: IL }", /region: not a region/],
  ["closed: [2026-02-30]", /closed\.0: not a day/],
  ["closed: [2027-01-03..2026-12-24]", /closed\.0: not a day/],
])("a fault in waiting is told: %s", (waiting, fault) => {
  const flow = waiting.startsWith("{") ? waiting : `{ ${waiting} }`;
  const read = readSettings(text.replace(/^waiting:[\s\S]*/m, `waiting: ${flow}\n`), "burin.yaml");
  expect(read.ok ? "" : read.faults.map(({ path, what }) => `${path}: ${what}`).join("\n")).toMatch(fault);
});

test.each([
  ["- manager: { name: Ana, address: ana@quillgate.example }", /projects\.0: needs project, buyer or/],
  ["- { project: Library, manager: { name: Ana } }", /projects\.0\.manager\.address/],
  [
    "- { buyer: fallowmere, manager: { name: Ana, address: a@b.example } }",
    /projects\.0\.buyer: not an address/,
  ],
  ["- { stations_above: -1, manager: { name: Ana, address: a@b.example } }", /projects\.0\.stations_above/],
  [
    "- { project: Library, manager: { name: Ana, address: a@b.example }, summary: { weekday: moonday } }",
    /projects\.0\.summary\.weekday/,
  ],
  [
    "- { project: Library, manager: { name: Desk, address: Orders@quillgate.example } }",
    /projects: the manager/,
  ],
])("a fault in projects is told: %s", (projects, fault) => {
  const read = readSettings(
    text.replace(/^projects:[\s\S]*?\n\n/m, `projects:\n  ${projects}\n\n`),
    "burin.yaml",
  );
  expect(read.ok ? "" : read.faults.map(({ path, what }) => `${path}: ${what}`).join("\n")).toMatch(fault);
});

test("who manages which orders, as the settings say", () => {
  const read = readSettings(text, "burin.yaml");
  expect(read.ok ? managingIn(read.value) : []).toEqual([
    {
      project: "Saltmarsh Ferry Terminal",
      manager: { name: "Ana Reyes", address: "ana@quillgate.example" },
      waits: true,
    },
  ]);
});

test("the closing days of the settings are days on which the desk is closed", () => {
  const read = readSettings(text, "burin.yaml");
  if (!read.ok || read.value.waiting === undefined) throw new Error("no settings");
  const { isOpen } = calendarIn(read.value.waiting, read.value.time_zone);
  const days = ["2026-11-26", "2026-11-27", "2026-12-23", "2026-12-24", "2026-12-31", "2027-01-04"];
  expect(days.map(isOpen)).toEqual([false, false, true, false, false, true]);
});
