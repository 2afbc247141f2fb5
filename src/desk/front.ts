import type { Context } from "hono";
import type { Desk } from "../intake/desk.ts";
import type { Put } from "../intake/release.ts";
import type { Account, Role } from "../ports/accounts.ts";
import type { Provider } from "./provider.ts";

/** What the page works with. */
export interface Front {
  readonly desk: Desk;
  /** Where packages of released orders go; absent where the settings name no folder. */
  readonly put?: Put;
  /** Where browsers find the page, without a slash at the end: "https://desk.quillgate.example". */
  readonly address: string;
  /** Hours that a session lasts. */
  readonly hours: number;
  /** Who vouches for people, beside passwords or instead of them. */
  readonly provider?: Provider;
  /** Sheets may be tried by whoever comes, without signing in. */
  readonly isTryOpen: boolean;
}

/** Who is signed in, and the proof that a form is the page's own. */
export interface Visitor {
  readonly account: Account;
  readonly token: string;
}

export interface Env {
  readonly Variables: { visitor?: Visitor; nonce?: string };
}

export type Ask = Context<Env>;

/** Somebody asks for what he may not have, or for what is not there. Its sentence is shown. */
export class Refused extends Error {
  readonly status: 400 | 403 | 404 | 413 | 429;
  constructor(status: Refused["status"], sentence: string) {
    super(sentence);
    this.status = status;
  }
}

/** Who asks. Pages that need nobody do not call it. */
export function visitorOf(c: Ask): Visitor {
  const visitor = c.get("visitor");
  if (visitor === undefined) throw new Refused(403, "Sign in first.");
  return visitor;
}

/** Roles in the words of the page. */
export const roleWords = {
  see: "may look",
  act: "may look and settle",
  release: "may look, settle and release",
  administer: "may do all, and let others in",
} as const satisfies Record<Role, string>;
