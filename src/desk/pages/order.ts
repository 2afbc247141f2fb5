import { html } from "hono/html";
import { contactsIn } from "../../audit/people.ts";
import type { Catalogue } from "../../catalogue/catalogue.ts";
import { facesOf } from "../../catalogue/faces.ts";
import { maySettle, mayWaive } from "../../checks/asked.ts";
import { letterStillOpen } from "../../checks/order/letter-still-open.ts";
import { wordsOf } from "../../checks/run.ts";
import { questionOf } from "../../judging/questions.ts";
import { gatherOrders } from "../../orders/gather.ts";
import { isAsReleased } from "../../orders/piece.ts";
import { may } from "../../ports/accounts.ts";
import type { Missing, Station } from "../../trade/order.ts";
import type { Problem } from "../../trade/problem.ts";
import type { LetterRecord, OrderRecord } from "../../trade/record.ts";
import type { DeviceSheet, Sheet } from "../../trade/sheet.ts";
import { type Ask, type Front, Refused, type Visitor, visitorOf } from "../front.ts";
import { lastNo } from "../last-no.ts";
import { type Markup, momentIn, onceForm, orderPath, ownForm, page, stamp } from "../page.ts";
import { asideForm, pointForm } from "./people.ts";

/** An order: its stations, its sheets with what is wrong, its questions, what happened, what can be done. */
export async function orderPage(c: Ask, front: Front, number: string, said?: string): Promise<Response> {
  visitorOf(c);
  const orders = await front.desk.store.orders.named(number);
  if (orders.length === 0) throw new Refused(404, `No order “${number}” is known.`);
  const [first] = orders;
  return page(
    c,
    front,
    { title: `Order ${first?.number ?? number}`, said },
    html`${orders.map((order) => orderPart(order, front, visitorOf(c)))}`,
  );
}

function orderPart(order: OrderRecord, front: Front, visitor: Visitor): Markup {
  const { timeZone } = front.desk;
  const stations = gatherOrders(order.sheets).flatMap((one) => one.stations);
  return html`<div class="row"><p>${order.project ?? "No project"} · ${order.buyer}</p>${stamp(order.verdict)}</div>
${contactsIn(order).map((contact) => html`<p>Call ${contact}</p>`)}
${releasedLine(order)}
${order.missing.length === 0 ? "" : html`<p>Still to come: ${missingWords(order.missing)}.</p>`}
${actForms(order, front, visitor)}
<h2>Points</h2>
${pointList(order, visitor)}
<h2>Stations</h2>
${stations.length === 0 ? html`<p class="faint">No sheet stands.</p>` : html`<div class="wall">${stations.map((station) => stationBox(station, order, front))}</div>`}
<p><a href="${orderPath(order.number)}/proof?buyer=${encodeURIComponent(order.buyer)}">Proof as a PDF, true to scale</a></p>
<h2>Sheets</h2>
${order.sheets.map((sheet) => sheetPart(sheet, order))}
<h2>What changed</h2>
${changeList(order, timeZone)}
<h2>Letters and what was answered</h2>
${letterTable([...order.letters, ...order.replies], timeZone)}`;
}

function releasedLine({ released, sheets }: OrderRecord): Markup {
  if (released === undefined) return html``;
  const cut = released.pieces.filter(({ engraved }) => engraved).length;
  const since = isAsReleased(sheets, released) ? "" : " It has changed since.";
  return html`<p>Released to engraving on ${released.on} by ${released.by}; ${cut} of ${released.pieces.length} pieces are engraved.${since}</p>`;
}

function missingWords(missing: readonly Missing[]): string {
  return missing
    .map(({ station, kind, position }) =>
      [station || "a station without a mark", kind === "plate" ? "plate" : `device ${position ?? ""}`].join(
        " ",
      ),
    )
    .join("; ");
}

/** A station as it hangs on the wall: what each gang holds, and what is missing or wrong there. */
function stationBox({ mark, plates, devices }: Station, order: OrderRecord, front: Front): Markup {
  const gangs = Math.min(plates[0]?.gangs ?? Math.max(1, ...devices.map(({ position = 0 }) => position)), 60);
  const places = Array.from({ length: gangs }, (_, i) => i + 1);
  const at = (place: number): DeviceSheet[] =>
    devices.filter(
      ({ position, standing }) =>
        position === place || (gangs === 1 && (standing === "alone" || position === undefined)),
    );
  return html`<section class="station" aria-label="Station ${mark}"><h3>${mark || "No mark"}</h3><div class="gangs">${places.map(
    (place) => gangBox(place, at(place), order, front),
  )}</div></section>`;
}

function gangBox(place: number, here: readonly DeviceSheet[], order: OrderRecord, { desk }: Front): Markup {
  const [device] = here;
  if (device === undefined) return html`<div class="gang missing">${place}<br>missing</div>`;
  const own = order.problems.filter(({ spots }) => spots.some(({ file }) => file === device.id));
  const kind = own.some(({ severity }) => severity === "stops")
    ? "wrong"
    : own.some(({ severity }) => severity === "asks")
      ? "asked"
      : "";
  const words = { wrong: "to fix", asked: "asked", "": "" }[kind];
  return html`<div class="gang ${kind}">${place} <b>${device.layouts.join(" + ")}</b> ${words}
${facesShown(device, desk.catalogue).map((text) => html`<div class="face">${text}</div>`)}
${here.length > 1 ? html`<p>${here.length} sheets</p>` : ""}</div>`;
}

/** The legends of a device, face by face; a dot where nothing is cut. */
function facesShown(device: DeviceSheet, catalogue: Catalogue): string[] {
  const faces = facesOf(device, catalogue) ?? device.legends.map(({ face }) => face);
  return faces.map((face) => {
    const rows = device.legends.find((one) => one.face === face)?.rows ?? [];
    return rows.filter((row) => row !== "").join("\n") || "·";
  });
}

/** Problems and questions with their numbers, each with what can be done about it. */
function pointList(order: OrderRecord, visitor: Visitor): Markup {
  const byId = new Map(order.sheets.map((sheet) => [sheet.id, sheet]));
  const numbers = new Map(order.questions.map(({ key, number }) => [key, number]));
  // One answer holds for all that read the same under one number.
  const points = new Map<string, { number?: number; problem: Problem; files: Set<string> }>();
  for (const problem of [...order.problems, ...order.questions.map((one) => one.problem)]) {
    // Each stands below, beside its letter.
    if (problem.check === letterStillOpen.id) continue;
    const number = numbers.get(questionOf(problem, byId).key);
    const { says } = wordsOf(problem);
    const point = points.get(`${number} ${says}`) ?? {
      ...(number === undefined ? {} : { number }),
      problem,
      files: new Set(),
    };
    for (const { file } of problem.spots) point.files.add(byId.get(file)?.file ?? "");
    points.set(`${number} ${says}`, point);
  }
  const words = order.carried.filter(({ what }) => what === "words");
  const ofWords = new Map(order.questions.map(({ problem, number }) => [problem.facts["words"], number]));
  if (points.size + words.length === 0) return html`<p class="faint">Nothing stands in its way.</p>`;
  return html`<ul class="tickets">${[...points.values()].map(({ number, problem, files }) => {
    const { says, fix } = wordsOf(problem);
    const names = [...files].filter((name) => name !== "");
    const stops = problem.severity === "stops";
    const no = number === undefined ? undefined : lastNo(order, number);
    return html`<li class="ticket ${problem.verdict}"><div class="row"><h3>${number === undefined ? "" : `${number}. `}${says}</h3>${stamp(problem.verdict)}</div>
<p>${fix}</p>${names.length === 0 ? "" : html`<p class="faint">${names.join(", ")}</p>`}
<p class="faint"><a href="/checks/${problem.check}">Why this is checked</a>${!stops && maySettle(problem) ? " · the sender can settle it by a reply" : ""}</p>
${no === undefined ? "" : html`<p>Answered with NO in <a href="/letters/${no.letter}">letter ${no.letter}</a>.</p>`}
${number === undefined || (stops && !mayWaive(problem)) ? "" : pointForm(order.number, number, visitor, { buyer: order.buyer, stops, no: no?.letter ?? 0 })}</li>`;
  })}
${words.map(({ letter, text }) => html`<li class="ticket person"><h3>${ofWords.has(text) ? `${ofWords.get(text)}. ` : ""}<a href="/letters/${letter}">Letter ${letter}</a> says “${text}”</h3>${asideForm(Number(letter), visitor)}</li>`)}</ul>`;
}

/** A sheet with its problems, and its page as it was sent with them marked. */
function sheetPart(sheet: Sheet, order: OrderRecord): Markup {
  const problems = order.problems.filter(({ spots }) => spots.some(({ file }) => file === sheet.id));
  const what =
    sheet.kind === "plate"
      ? `plate of ${sheet.gangs ?? "?"} gangs`
      : `device ${sheet.layouts.join(" + ")}${sheet.standing === "alone" ? ", alone" : `, position ${sheet.position ?? "?"}`}`;
  return html`<details class="ticket"${problems.length > 0 ? html` open` : ""}><summary><b>${sheet.file}</b> ${sheet.mark ?? ""} ${what}, ${sheet.finish ?? "no finish"}</summary>
<div class="sheet"><div>
${problems.length === 0 ? html`<p class="faint">Nothing to say of it.</p>` : html`<ul>${problems.map((problem) => html`<li>${wordsOf(problem).says}</li>`)}</ul>`}
<p><a href="/files/${sheet.id}">The file as it was sent</a> · id ${sheet.id}</p></div>
<a href="/files/${sheet.id}/page/1"><img src="/files/${sheet.id}/page/1" loading="lazy" width="720" height="930" alt="The first page of ${sheet.file}, with what is wrong outlined"></a></div></details>`;
}

function changeList({ revisions }: OrderRecord, timeZone: string): Markup {
  return html`<ol>${revisions.map(({ at, cause, letter, verdict, sheets, opened, closed }, i) => {
    const before = revisions[i - 1]?.sheets ?? [];
    const had = new Set(before.map(({ id }) => id));
    const has = new Set(sheets.map(({ id }) => id));
    const told = (title: string, what: string): string => (what === "" ? "" : `; ${title} ${what}`);
    const names = (some: readonly { readonly file: string }[]): string =>
      some.map(({ file }) => file).join(", ");
    return html`<li>${momentIn(at, timeZone)}, ${cause === "letter" ? html`<a href="/letters/${letter}">letter ${letter}</a>` : cause}: ${verdict ?? "nothing is left of it"}${told(
      "came",
      names(sheets.filter(({ id }) => !had.has(id))),
    )}${told("went", names(before.filter(({ id }) => !has.has(id))))}${told("opened", opened.join(", "))}${told("settled or mended", closed.join(", "))}</li>`;
  })}</ol>`;
}

function letterTable(letters: readonly LetterRecord[], timeZone: string): Markup {
  return html`<div class="wide"><table class="stack"><tr><th>Letter</th><th>Received</th><th>From</th><th>Verdict</th><th>Answer</th></tr>${letters
    .toSorted((a, b) => a.letter - b.letter)
    .map(
      ({ letter, receivedAt, from, subject, verdict, state }) =>
        html`<tr><td><a href="/letters/${letter}">${letter}. ${subject || "(no subject)"}</a></td><td data-label="Received">${momentIn(receivedAt, timeZone)}</td>
<td data-label="From">${from ?? ""}</td><td data-label="Verdict">${verdict ?? ""}</td><td data-label="Answer">${state}</td></tr>`,
    )}</table></div>`;
}

/** What can be done with an order as a whole. */
function actForms(order: OrderRecord, { put }: Front, visitor: Visitor): Markup {
  const { role } = visitor.account;
  const path = orderPath(order.number);
  const buyer = html`${ownForm(visitor)}<input type="hidden" name="buyer" value="${order.buyer}">`;
  const seen = html`${buyer}<input type="hidden" name="revision" value="${order.revision}">`;
  const isAsIs = order.released !== undefined && isAsReleased(order.sheets, order.released);
  const mayRelease = order.verdict === "pass" && put !== undefined && !isAsIs && may(role, "release");
  return html`${mayRelease ? html`<form class="acts" method="post" action="${path}/release">${seen}<button class="main">Release to engraving</button></form>` : ""}
${
  order.released !== undefined && may(role, "act")
    ? html`<form class="acts" method="post" action="${path}/cut">${seen}<label>Stations that are engraved; all, if none is named<input name="stations" placeholder="S-101, S-102"></label><button>It is engraved</button></form>`
    : ""
}
${
  may(role, "act")
    ? html`<details><summary>Write to the sender, or move a sheet</summary>
<form method="post" action="${path}/write">${buyer}${onceForm()}<p><label>Your words; how the order stands is told below them<textarea name="words" required maxlength="2000"></textarea></label></p><button>Send</button></form>
<form class="acts" method="post" action="${path}/place">${buyer}
<label>Sheet<select name="sheet">${order.sheets.map(({ id, file }) => html`<option value="${id}">${file} (${id})</option>`)}</select></label>
<label>Station<input name="mark" size="8"></label>
<label>Position<input name="position" size="3" inputmode="numeric" pattern="[1-9][0-9]?"></label>
<label>Order<input name="order" size="12"></label>
<label>Reason<input name="why" size="30" required></label><button>Put it there</button></form></details>`
    : ""
}
${may(role, "administer") ? html`<p><a href="/erase?address=${encodeURIComponent(order.buyer)}">Erase all of this buyer</a></p>` : ""}`;
}
