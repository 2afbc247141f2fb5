import type { Provider } from "../../src/desk/provider.ts";
import type { Role } from "../../src/ports/accounts.ts";
import { password } from "./desk-page.ts";

/** What a record has that routes lead to. Letter 1 came with a sheet of the order; `token` is that of a buyer's link. */
export interface Known {
  readonly order: string;
  readonly token: string;
}

/** A route of the desk. `path` is written as the app has it, `at` is where it is tried. */
export interface Route {
  readonly method: "GET" | "POST";
  readonly path: string;
  readonly at: (known: Known) => string;
  /** The least role that may; a guest is nobody who is signed in. */
  readonly least: Role | "guest";
  /** A form as it would be filled in. */
  readonly fields?: Readonly<Record<string, string>>;
}

const encoded = encodeURIComponent;
const orders = "/orders/:number";
const letters = "/letters/:letter{[0-9]+}";
const files = "/files/:letter{[0-9]+}/:file{[0-9]+}";

function shows(least: Route["least"], path: string, at: (known: Known) => string = () => path): Route {
  return { method: "GET", path, at, least };
}

function acts(
  least: Route["least"],
  path: string,
  fields: Readonly<Record<string, string>>,
  at: (known: Known) => string = () => path,
): Route {
  return { method: "POST", path, at, least, fields };
}

const onOrder = (end: string) => (known: Known) => `/orders/${encoded(known.order)}${end}`;
const onLetter = (end: string) => () => `/letters/1${end}`;

/** All routes of the desk. A test holds it to those that the app has. */
export const routes: readonly Route[] = [
  shows("guest", "/style.css"),
  shows("guest", "/script.js"),
  shows("guest", "/sign-in"),
  shows("guest", "/sign-in/provider"),
  shows("guest", "/sign-in/back"),
  shows("guest", "/answer/:token", ({ token }) => `/answer/${token}`),
  shows("see", "/"),
  shows("see", "/people"),
  shows("see", "/orders", ({ order }) => `/orders?search=${encoded(order)}`),
  shows("see", orders, onOrder("")),
  shows("see", `${orders}/proof`, onOrder("/proof")),
  shows("see", "/letters"),
  shows("see", letters, onLetter("")),
  shows("see", `${letters}/original`, onLetter("/original")),
  shows("see", `${letters}/answer`, onLetter("/answer")),
  shows("see", files, () => "/files/1/1"),
  shows("see", `${files}/page/:page{[0-9]+}`, () => "/files/1/1/page/1"),
  shows("see", "/day"),
  shows("see", "/checks"),
  shows("see", "/checks/:id", () => "/checks/spelling"),
  shows("see", "/try"),
  shows("administer", "/accounts"),
  shows("administer", "/erase"),
  acts("guest", "/sign-in", { user: "nobody", password: "nothing at all" }),
  acts("guest", "/answer/:token", { order: "FM-80", "q-1": "yes" }, ({ token }) => `/answer/${token}`),
  acts("see", "/sign-out", {}),
  acts("see", "/try", {}),
  acts("act", `${orders}/points`, { number: "1", act: "say", why: "please look" }, onOrder("/points")),
  acts("act", `${orders}/write`, { words: "Good morning" }, onOrder("/write")),
  acts("act", `${orders}/place`, { sheet: "1/1", mark: "P-2", why: "moved" }, onOrder("/place")),
  acts("act", `${orders}/cut`, {}, onOrder("/cut")),
  acts("release", `${orders}/release`, {}, onOrder("/release")),
  acts("act", `${letters}/let-in`, { why: "known" }, onLetter("/let-in")),
  acts("act", `${letters}/aside`, { why: "read" }, onLetter("/aside")),
  acts("act", `${letters}/again`, { why: "lost" }, onLetter("/again")),
  acts("administer", "/accounts", { user: "mallory", name: "M", role: "administer", password }),
  acts("administer", "/erase", {
    address: "nobody@oakmoor.example",
    confirm: "nobody@oakmoor.example",
    why: "asked",
  }),
  acts("administer", "/accounts/shut", { user: "see" }),
];

/** A provider that nobody reaches, so that the app has its routes. */
export const awayProvider: Provider = {
  only: false,
  begin: () => Promise.reject(new Error("nobody is there")),
  finish: () => Promise.reject(new Error("nobody is there")),
};
