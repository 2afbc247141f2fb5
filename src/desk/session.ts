import { createHash, createHmac, randomBytes, timingSafeEqual } from "node:crypto";
import { deleteCookie, getCookie, setCookie } from "hono/cookie";
import type { Account } from "../ports/accounts.ts";
import type { Ask, Front, Visitor } from "./front.ts";

/** The cookie that holds the secret of a session. */
const cookie = "burin_desk";

/** Begins a session for an account. Its secret is new, so that nobody can have known it before. */
export async function beginSession(
  c: Ask,
  { desk, hours, address }: Front,
  { user }: Account,
): Promise<void> {
  const secret = randomBytes(32).toString("base64url");
  const now = desk.clock.now();
  const until = new Date(now.getTime() + hours * 3_600_000);
  const old = getCookie(c, cookie);
  if (old !== undefined) await desk.store.accounts.end(hashOf(old));
  await desk.store.accounts.begin({ user, until }, hashOf(secret), now);
  setCookie(c, cookie, secret, {
    httpOnly: true,
    sameSite: "Lax",
    path: "/",
    secure: address.startsWith("https:"),
    maxAge: hours * 3600,
  });
}

export async function endSession(c: Ask, { desk }: Front): Promise<void> {
  const secret = getCookie(c, cookie);
  if (secret !== undefined) await desk.store.accounts.end(hashOf(secret));
  deleteCookie(c, cookie, { path: "/" });
}

/** Who asks, by his cookie; undefined if he has none that counts. */
export async function visitorBy(c: Ask, { desk }: Front): Promise<Visitor | undefined> {
  const secret = getCookie(c, cookie);
  if (secret === undefined) return undefined;
  const account = await desk.store.accounts.of(hashOf(secret), desk.clock.now());
  return account && { account, token: tokenOf(secret) };
}

/** Whether a form carries the token of this session. */
export function isOwnForm({ token }: Visitor, given: unknown): boolean {
  if (typeof given !== "string" || given.length !== token.length) return false;
  return timingSafeEqual(Buffer.from(given), Buffer.from(token));
}

/** Forms carry it, so that a page of somebody else's cannot send one. */
function tokenOf(secret: string): string {
  return createHmac("sha256", secret).update("forms").digest("base64url");
}

function hashOf(secret: string): string {
  return createHash("sha256").update(secret).digest("hex");
}
