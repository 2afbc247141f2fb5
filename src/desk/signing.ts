import type { Hono } from "hono";
import { deleteCookie, getCookie, setCookie } from "hono/cookie";
import { addressOf, fieldsOf, secretOf } from "./asked.ts";
import { type Ask, type Env, type Front, Refused } from "./front.ts";
import { signInPage } from "./pages/sign-in.ts";
import { isPassword } from "./passwords.ts";
import type { Leaving, Provider } from "./provider.ts";
import { beginSession, endSession } from "./session.ts";
import { countTries } from "./tries.ts";

const minute = 60_000;
/** Sign-ins of one user, and from one address. */
const limits = {
  user: { times: 10, withinMs: 15 * minute },
  address: { times: 50, withinMs: 15 * minute },
} as const;

/** Coming in and going out. */
export function signing(app: Hono<Env>, front: Front): void {
  const perUser = countTries(limits.user);
  const perAddress = countTries(limits.address);
  const { provider, desk } = front;
  app.get("/sign-in", (c) => signInPage(c, front, c.req.query("next") ?? "/"));
  app.post("/sign-in", async (c) => {
    if (provider?.only === true) throw new Refused(403, "Nobody comes in with a password here.");
    const field = await fieldsOf(c);
    const user = field("user").toLowerCase();
    const now = desk.clock.now();
    if (!perAddress.allow([addressOf(c)], now) || !perUser.allow([user], now))
      throw new Refused(429, "Too many tries. Wait a quarter of an hour.");
    const account = await desk.store.accounts.find(user);
    const isRight = await isPassword(await secretOf(c), account?.password);
    if (!isRight || account === undefined || account.isShut) {
      c.status(403);
      return signInPage(c, front, field("next"), "User or password is wrong.");
    }
    perUser.forget(user);
    await beginSession(c, front, account);
    return c.redirect(withinHere(field("next")), 303);
  });
  app.post("/sign-out", async (c) => {
    await endSession(c, front);
    return c.redirect("/sign-in", 303);
  });
  if (provider !== undefined) vouching(app, front, provider);
}

/** The cookie that holds what a browser keeps while it is at the provider. */
const away = "burin_away";

/** Coming in by somebody else's word. An account has to be there: it says who may do what. */
function vouching(app: Hono<Env>, front: Front, provider: Provider): void {
  const { desk, address } = front;
  const perAddress = countTries(limits.address);
  app.get("/sign-in/provider", async (c) => {
    if (!perAddress.allow([addressOf(c)], desk.clock.now()))
      throw new Refused(429, "Too many tries. Wait a quarter of an hour.");
    const { url, leaving } = await provider.begin(`${address}/sign-in/back`).catch((cause: unknown) => {
      desk.log.warn({ cause }, "the provider of sign-in cannot be reached");
      throw new Refused(403, "Whoever vouches for people here cannot be reached. Try again in a while.");
    });
    setCookie(c, away, JSON.stringify({ ...leaving, next: c.req.query("next") ?? "/" }), {
      httpOnly: true,
      sameSite: "Lax",
      path: "/sign-in",
      secure: address.startsWith("https:"),
      maxAge: 600,
    });
    return c.redirect(url);
  });
  app.get("/sign-in/back", async (c) => {
    const { next, ...leaving } = leavingOf(c);
    deleteCookie(c, away, { path: "/sign-in" });
    const here = new URL(c.req.url);
    const email = await provider
      .finish(`${address}/sign-in/back${here.search}`, leaving)
      .catch((cause: unknown) => {
        desk.log.warn({ cause }, "a sign-in by the provider failed");
        throw new Refused(403, "That sign-in did not hold. Begin again.");
      });
    const account = email === undefined ? undefined : await desk.store.accounts.find(email);
    if (account === undefined || account.isShut)
      throw new Refused(
        403,
        "You are known there, but have no account here. Whoever runs this desk makes one.",
      );
    await beginSession(c, front, account);
    return c.redirect(withinHere(next));
  });
}

function leavingOf(c: Ask): Leaving & { readonly next: string } {
  try {
    const { state, nonce, verifier, next } = JSON.parse(getCookie(c, away) ?? "") as Record<string, unknown>;
    if ([state, nonce, verifier].every((one) => typeof one === "string" && one !== ""))
      return { state: String(state), nonce: String(nonce), verifier: String(verifier), next: String(next) };
  } catch {
    // It is not ours, and counts as none.
  }
  throw new Refused(403, "That sign-in was not begun here, or too long ago. Begin again.");
}

/** A path of this page; of nothing else, wherever a link wants to lead. */
function withinHere(next: string): string {
  return /^\/(?![/\\])[\w\-./%]*$/.test(next) ? next : "/";
}
