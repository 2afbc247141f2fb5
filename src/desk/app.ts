import { Hono } from "hono";
import { HTTPException } from "hono/http-exception";
import type { Said } from "../intake/settle.ts";
import type { Role } from "../ports/accounts.ts";
import { accounts } from "./accounts.ts";
import { actOnLetter, cut, place, release, settlePoint, write } from "./actions.ts";
import { addressOf, type Fields, fieldsOf } from "./asked.ts";
import { download, fileOf, pageOf, proofOf } from "./files.ts";
import { type Ask, type Env, type Front, Refused } from "./front.ts";
import { guard, needs } from "./guard.ts";
import { checkPage, checksPage } from "./pages/checks.ts";
import { dayPage } from "./pages/day.ts";
import { erased, erasePage } from "./pages/erase.ts";
import { letterPage } from "./pages/letter.ts";
import { lettersPage } from "./pages/letters.ts";
import { orderPage } from "./pages/order.ts";
import { peoplePage } from "./pages/people.ts";
import { replied, replyPage } from "./pages/reply.ts";
import { ordersPage, todayPage } from "./pages/today.ts";
import { tried, tryPage } from "./pages/try.ts";
import { signing } from "./signing.ts";
import { sorry } from "./sorry.ts";
import { script, style } from "./style.ts";
import { countTries } from "./tries.ts";

const minute = 60_000;
/** Sheets tried, and links followed, from one address. */
const limits = {
  tries: { times: 30, withinMs: 10 * minute },
  links: { times: 60, withinMs: 10 * minute },
} as const;

/** The page for customer service, over a desk. */
export function deskApp(front: Front): Hono<Env> {
  const app = new Hono<Env>();
  guard(app, front);
  signing(app, front);
  reading(app, front);
  acting(app, front);
  trying(app, front);
  answering(app, front);
  accounts(app, front);
  erasing(app, front);
  app.notFound((c) => sorry(c, front, new Refused(404, "There is no such page.")));
  app.onError((cause, c) => {
    if (cause instanceof Refused) return sorry(c, front, cause);
    if (cause instanceof HTTPException)
      return sorry(c, front, new Refused(403, "That form came from another page."));
    front.desk.log.warn({ cause, path: c.req.path }, "a page of the desk failed");
    return sorry(
      c,
      front,
      new Refused(400, "That went wrong. The log says why; nothing was changed by halves."),
    );
  });
  return app;
}

function reading(app: Hono<Env>, front: Front): void {
  app.get("/style.css", (c) => c.body(style, 200, { "content-type": "text/css; charset=utf-8" }));
  app.get("/script.js", (c) => c.body(script, 200, { "content-type": "text/javascript; charset=utf-8" }));
  app.get("/", (c) => todayPage(c, front));
  app.get("/orders", (c) => ordersPage(c, front));
  app.get("/orders/:number", (c) => orderPage(c, front, c.req.param("number")));
  app.get("/orders/:number/proof", (c) => proofOf(c, front, c.req.param("number")));
  app.get("/people", (c) => peoplePage(c, front));
  app.get("/checks", (c) => checksPage(c, front));
  app.get("/checks/:id", (c) => checkPage(c, front, c.req.param("id")));
  app.get("/day", (c) => dayPage(c, front));
  app.get("/letters", (c) => lettersPage(c, front));
  app.get("/letters/:letter{[0-9]+}", (c) => letterPage(c, front, Number(c.req.param("letter"))));
  app.get("/letters/:letter{[0-9]+}/original", async (c) => {
    const letter = c.req.param("letter");
    return download(await bytesOfLetter(front, Number(letter)), `letter ${letter}.eml`);
  });
  app.get("/letters/:letter{[0-9]+}/answer", async (c) => {
    const letter = c.req.param("letter");
    const answer = await front.desk.store.answers.of(Number(letter));
    if (answer === undefined) throw new Refused(404, "That letter has no answer.");
    return download(answer.bytes, `answer to letter ${letter}.eml`);
  });
  app.get("/files/:letter{[0-9]+}/:file{[0-9]+}", (c) => fileOf(c, front, fileId(c)));
  app.get("/files/:letter{[0-9]+}/:file{[0-9]+}/page/:page{[0-9]+}", (c) =>
    pageOf(c, front, fileId(c), Number(c.req.param("page"))),
  );
}

function acting(app: Hono<Env>, front: Front): void {
  const on = (
    path: string,
    role: Role,
    act: (c: Ask, field: Fields) => Promise<Said>,
    shows: "order" | "letter",
  ) =>
    app.post(path, async (c) => {
      needs(c, role);
      const said = await act(c, await fieldsOf(c));
      if (!said.done) c.status(409);
      return shows === "order"
        ? orderPage(c, front, numberIn(c), said.words)
        : letterPage(c, front, letterIn(c), said.words);
    });
  on("/orders/:number/points", "act", (c, field) => settlePoint(c, front, numberIn(c), field), "order");
  on("/orders/:number/write", "act", (c, field) => write(c, front, numberIn(c), field), "order");
  on("/orders/:number/place", "act", (c, field) => place(c, front, field), "order");
  on("/orders/:number/release", "release", (c, field) => release(c, front, numberIn(c), field), "order");
  on("/orders/:number/cut", "act", (c, field) => cut(c, front, numberIn(c), field), "order");
  for (const what of ["let-in", "aside", "again"] as const)
    on(
      `/letters/:letter{[0-9]+}/${what}`,
      "act",
      (c, field) => actOnLetter(c, front, letterIn(c), what, field),
      "letter",
    );
}

function trying(app: Hono<Env>, front: Front): void {
  const perAddress = countTries(limits.tries);
  app.get("/try", (c) => tryPage(c, front));
  app.post("/try", async (c) => {
    if (c.get("visitor") === undefined && !perAddress.allow([addressOf(c)], front.desk.clock.now()))
      throw new Refused(429, "Too many tries. Wait ten minutes.");
    const { files = [] } = await c.req.parseBody({ all: true });
    const given = (Array.isArray(files) ? files : [files]).filter(
      (one) => one instanceof File && one.size > 0,
    ) as File[];
    const read = given.map(async (one) => ({
      name: one.name,
      bytes: new Uint8Array(await one.arrayBuffer()),
    }));
    return tried(c, front, await Promise.all(read));
  });
}

/** What a buyer does who follows the link of an answer. The link is all that he has to show. */
function answering(app: Hono<Env>, front: Front): void {
  const perAddress = countTries(limits.links);
  const may = (c: Ask): void => {
    if (!perAddress.allow([addressOf(c)], front.desk.clock.now()))
      throw new Refused(429, "Too many tries. Wait ten minutes.");
  };
  app.get("/answer/:token", (c) => {
    may(c);
    return replyPage(c, front, c.req.param("token"));
  });
  app.post("/answer/:token", async (c) => {
    may(c);
    return replied(c, front, c.req.param("token"), await fieldsOf(c));
  });
}

function erasing(app: Hono<Env>, front: Front): void {
  app.get("/erase", (c) => {
    needs(c, "administer");
    return erasePage(c, front, c.req.query("address") ?? "");
  });
  app.post("/erase", async (c) => {
    needs(c, "administer");
    return erased(c, front, await fieldsOf(c));
  });
}

/** Says in a sentence why something is not to be had. */
function numberIn(c: Ask): string {
  return c.req.param("number") ?? "";
}

function letterIn(c: Ask): number {
  return Number(c.req.param("letter"));
}

function fileId(c: Ask): string {
  return `${c.req.param("letter")}/${c.req.param("file")}`;
}

async function bytesOfLetter({ desk }: Front, letter: number): Promise<Uint8Array> {
  return desk.store.letters.bytesOf(letter).catch(() => {
    throw new Refused(404, "No such letter is in the record.");
  });
}
