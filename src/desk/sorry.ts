import { html } from "hono/html";
import type { Ask, Front, Refused } from "./front.ts";
import { page } from "./page.ts";

/** The page of somebody who is refused: why, in a sentence. */
export function sorry(c: Ask, front: Front, { status, message }: Refused): Response | Promise<Response> {
  c.status(status);
  return page(
    c,
    front,
    { title: "Not so" },
    html`<p role="alert" tabindex="-1" autofocus>${message}</p><p><a href="/">To the first page</a></p>`,
  );
}
