import type { Hono } from "hono";
import { bodyLimit } from "hono/body-limit";
import { csrf } from "hono/csrf";
import { secureHeaders } from "hono/secure-headers";
import { may, type Role } from "../ports/accounts.ts";
import { type Ask, type Env, type Front, Refused, visitorOf } from "./front.ts";
import { mostTried } from "./pages/try.ts";
import { isOwnForm, visitorBy } from "./session.ts";
import { sorry } from "./sorry.ts";

/** Pages that need nobody to be signed in. */
const open = new Set(["/sign-in", "/sign-in/provider", "/sign-in/back", "/style.css", "/script.js"]);

/** What holds for every page: its headers, who asks, and that a form is our own. */
export function guard(app: Hono<Env>, front: Front): void {
  // What is to be kept has no rights where it is opened all the same.
  app.use(async (c, next) => {
    await next();
    if (c.res.headers.has("content-disposition"))
      c.res.headers.set("content-security-policy", "sandbox; default-src 'none'");
  });
  app.use(
    secureHeaders({
      contentSecurityPolicy: {
        defaultSrc: ["'none'"],
        styleSrc: ["'self'"],
        scriptSrc: ["'self'"],
        imgSrc: ["'self'", "data:"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
        baseUri: ["'none'"],
      },
      referrerPolicy: "same-origin",
      xFrameOptions: "DENY",
      strictTransportSecurity: front.address.startsWith("https:"),
      crossOriginResourcePolicy: "same-origin",
    }),
  );
  app.use(csrf({ origin: new URL(front.address).origin }));
  app.use(
    bodyLimit({
      maxSize: mostTried.bytes + 1_000_000,
      onError: (c) => sorry(c, front, new Refused(413, "That is more than is taken at once.")),
    }),
  );
  app.use(async (c, next) => {
    const visitor = await visitorBy(c, front);
    if (visitor !== undefined) c.set("visitor", visitor);
    c.header("cache-control", "private, no-store");
    const isOpen =
      open.has(c.req.path) || c.req.path.startsWith("/answer/") || (front.isTryOpen && c.req.path === "/try");
    if (visitor === undefined && !isOpen) {
      if (c.req.method === "GET") return c.redirect(`/sign-in?next=${encodeURIComponent(c.req.path)}`);
      throw new Refused(403, "Sign in first.");
    }
    if (
      c.req.method === "POST" &&
      visitor !== undefined &&
      c.req.path !== "/sign-in" &&
      !c.req.path.startsWith("/answer/")
    ) {
      const { token } = await c.req.parseBody();
      if (!isOwnForm(visitor, token)) throw new Refused(403, "This form is too old. Open its page again.");
    }
    return next();
  });
}

/** Refuses whoever is signed in and has not this role. */
export function needs(c: Ask, role: Role): void {
  if (!may(visitorOf(c).account.role, role)) throw new Refused(403, "Your account may not do that.");
}
