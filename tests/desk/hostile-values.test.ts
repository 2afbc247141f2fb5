import { simpleParser } from "mailparser";
import { expect, test } from "vitest";
import { csvFiles } from "../../src/audit/csv.ts";
import { peopleLines } from "../../src/audit/people-text.ts";
import { readPeriod } from "../../src/audit/period.ts";
import { calendarOf } from "../../src/calendar/business-days.ts";
import type { Desk } from "../../src/intake/desk.ts";
import { readPeople } from "../../src/intake/tell-people.ts";
import { temporaryDesk } from "../make/desk.ts";
import { type Browser, pagedDesk } from "../make/desk-page.ts";
import { awayProvider, type Known, routes } from "../make/desk-routes.ts";
import { hostileValues, safe } from "../make/hostile-values.ts";
import { post } from "../make/thread.ts";

const address = "http://desk.quillgate.example";

/** Places of a sheet where anybody may type anything. */
const typed = [
  "order",
  "project",
  "notes",
  "contact.name",
  "contact.phone",
  "bill.name",
  "bill.street",
  "part-key",
];

/** A desk to which somebody has sent a value in all that he can write. */
async function deskWith(value: string) {
  const plain = await temporaryDesk();
  const desk = { ...plain, rules: { ...plain.rules, links: { address, days: 14 } } };
  const paged = await pagedDesk({ desk, provider: awayProvider, put: (name) => Promise.resolve(name) });
  // A header holds no line end; in a field of a sheet anything may stand.
  const line = value.replaceAll(/[\r\n\t]+/g, " ");
  const sheet = {
    mark: value,
    legend: [value],
    fill: Object.fromEntries(typed.map((place) => [place, value])),
  };
  await post(desk, {
    from: `"${line.replaceAll(/["\\]/g, "\\$&")}" <greta@fallowmere.example>`,
    sheets: [sheet, { mark: "P-2", legend: ["SALONA"], fill: { order: value } }],
    files: [{ file: `${value}.html`, bytes: Buffer.from("<script>alert(1)</script>") }],
    subject: line,
    text: `please ${value}`,
  });
  // One of us writes, settles and waives in the same words, under a name of the same kind.
  const own = await paged.as("administer");
  const [order] = (await desk.store.letters.read(1)).orders;
  const known: Known = { order: order ?? "", token: await tokenOf(desk) };
  return { desk, own, known };
}

async function tokenOf(desk: Desk): Promise<string> {
  const { text = "" } = await simpleParser(Buffer.from((await desk.store.answers.of(1))?.bytes ?? ""));
  return /\/answer\/(\S+)/.exec(text)?.[1] ?? "";
}

async function isSafe(response: Response, path: string): Promise<void> {
  expect([path, response.status]).not.toEqual([path, 500]);
  for (const [name, field] of response.headers)
    expect(`${name}: ${field}`, path).not.toMatch(/[\r\n]|everybody@/);
  const disposition = response.headers.get("content-disposition");
  if (disposition !== null)
    expect(disposition, path).toMatch(/^attachment; filename\*=UTF-8''[\w%.'()!~*-]+$/);
  const type = response.headers.get("content-type") ?? "";
  if (disposition !== null || type.startsWith("text/css") || type.startsWith("text/javascript")) return;
  if (type.startsWith("image/png")) return;
  expect([path, type]).toEqual([path, "text/html; charset=UTF-8"]);
  safe.html(await response.text(), path);
}

async function answersAreSafe(desk: Desk): Promise<number> {
  let sent = 0;
  // Notes of ours are counted among the letters.
  for (let letter = 1; letter <= 20; letter++) {
    const answer = await desk.store.answers.of(letter);
    if (answer === undefined) continue;
    sent += 1;
    const bytes = Buffer.from(answer.bytes);
    safe.head(bytes.toString("latin1").split("\r\n\r\n")[0] ?? "", `head of ${letter}`);
    expect(answer.recipient).toBe("greta@fallowmere.example");
    const { subject = "", text = "", html, attachments } = await simpleParser(bytes);
    safe.text(subject, `subject of ${letter}`);
    safe.text(text, `text of ${letter}`);
    safe.html(String(html).replace(/<head>[^]*<\/head>/, ""), `page of ${letter}`);
    for (const { filename = "" } of attachments) safe.name(filename, `file of ${letter}`);
  }
  return sent;
}

test.each(Object.entries(hostileValues))(
  "what somebody sends as %s does nothing anywhere",
  async (_, value) => {
    const { desk, own, known } = await deskWith(value);
    for (const route of routes.filter(({ method }) => method === "GET")) {
      const path = route.at(known);
      await isSafe(await own.get(path), path);
    }
    expect((await own.get(`/orders/${encodeURIComponent(known.order)}`)).status).toBe(200);
    expect((await own.get(`/answer/${known.token}`)).status).toBe(200);
    for (const route of routes.filter(({ method, path }) => method === "POST" && path !== "/sign-out"))
      await isSafe(await actWith(own, route.at(known), route.fields ?? {}, value), route.at(known));
    expect(await answersAreSafe(desk)).toBeGreaterThan(1);
    const now = desk.clock.now();
    safe.text(peopleLines(await readPeople(desk.store, now), now).join("\n"), "the people's list");
    const day = { first: "2026-11-09", last: "2026-11-09" };
    const period = await readPeriod(desk.store.audited, day, calendarOf(desk));
    for (const [name, csv] of csvFiles(period)) safe.csv(csv, name);
  },
);

/** Sends a form with the value in all its fields that hold words. */
function actWith(
  own: Browser,
  path: string,
  fields: Readonly<Record<string, string>>,
  value: string,
): Promise<Response> {
  const words = ["why", "words", "mark", "name", "stations"].filter((name) => name in fields);
  return own.post(path, { ...fields, ...Object.fromEntries(words.map((name) => [name, value])) });
}

test("a file that was attached is kept by the browser, never shown or run in the page's name", async () => {
  const { desk, as } = await pagedDesk();
  await post(desk, {
    sheets: [{ mark: "P-1", legend: ["POOL"], fill: { order: "FM-80" } }],
    files: [{ file: `x"\r\nset-cookie: a=b.html`, bytes: Buffer.from("<script>alert(1)</script>") }],
  });
  const own = await as("see");
  const [, file] = (await desk.store.letters.read(1)).attachments;
  const response = await own.get(`/files/${file?.id}`);
  expect(response.status).toBe(200);
  expect(response.headers.get("content-type")).toBe("application/octet-stream");
  expect(response.headers.get("content-disposition")).toMatch(/^attachment; filename\*=UTF-8''[\w%.-]+$/);
  expect(response.headers.get("content-security-policy")).toContain("sandbox");
  expect(response.headers.get("x-content-type-options")).toBe("nosniff");
  expect(response.headers.get("set-cookie")).toBeNull();
});
