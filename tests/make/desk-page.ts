import type { Hono } from "hono";
import { deskApp } from "../../src/desk/app.ts";
import type { Env, Front } from "../../src/desk/front.ts";
import { hashPassword } from "../../src/desk/passwords.ts";
import type { Desk } from "../../src/intake/desk.ts";
import type { Role } from "../../src/ports/accounts.ts";
import { temporaryDesk } from "./desk.ts";

export const password = "a quill for every wall";
const address = "http://desk.quillgate.example";

/** A browser that keeps its cookie and follows no link by itself. */
export interface Browser {
  cookie: string;
  readonly get: (path: string) => Promise<Response>;
  /** Sends a form, with the token that the page gave unless another is named. */
  readonly post: (
    path: string,
    fields: Readonly<Record<string, string>>,
    headers?: Record<string, string>,
  ) => Promise<Response>;
}

export interface PagedDesk {
  readonly desk: Desk;
  readonly app: Hono<Env>;
  readonly browser: (from?: string) => Browser;
  /** A browser in which somebody of this role is signed in. */
  readonly as: (role: Role) => Promise<Browser>;
}

/** A desk with its page, and accounts that are called after their roles. */
export async function pagedDesk(changes: Partial<Front> = {}): Promise<PagedDesk> {
  const desk = changes.desk ?? (await temporaryDesk());
  const app = deskApp({ address, hours: 10, isTryOpen: false, ...changes, desk });
  const hash = await hashPassword(password);
  const browser = (from = "203.0.113.7"): Browser => {
    const env = { incoming: { socket: { remoteAddress: from } } };
    const send = async (
      path: string,
      init: RequestInit & { headers?: Record<string, string> },
    ): Promise<Response> => {
      const headers = { ...init.headers, ...(own.cookie === "" ? {} : { cookie: own.cookie }) };
      const response = await app.request(`${address}${path}`, { ...init, headers, redirect: "manual" }, env);
      const set = response.headers.get("set-cookie");
      if (set !== null) own.cookie = set.split(";")[0] ?? "";
      return response;
    };
    const own: Browser = {
      cookie: "",
      get: (path) => send(path, {}),
      post: async (path, fields, headers = { origin: address }) => {
        const token = fields["token"] ?? tokenIn(await (await own.get("/try")).text());
        const body = new URLSearchParams({ ...fields, token }).toString();
        return send(path, {
          method: "POST",
          body,
          headers: { "content-type": "application/x-www-form-urlencoded", ...headers },
        });
      },
    };
    return own;
  };
  return {
    desk,
    app,
    browser,
    async as(role) {
      const account = { user: role, name: `Rosa ${role}`, role, password: hash, isShut: false };
      await desk.store.accounts.save(account, "a test", desk.clock.now());
      const own = browser();
      await own.post("/sign-in", { user: role, password, next: "/", token: "" });
      return own;
    },
  };
}

/** The token that a page's forms carry. */
export function tokenIn(page: string): string {
  return /name="token" value="([^"]+)"/.exec(page)?.[1] ?? "";
}
