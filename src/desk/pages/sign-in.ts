import { html } from "hono/html";
import type { Ask, Front } from "../front.ts";
import { type Markup, page } from "../page.ts";

/** Where somebody says who he is. `next` is the page that he wanted. */
export function signInPage(c: Ask, front: Front, next: string, said?: string): Response | Promise<Response> {
  return page(
    c,
    front,
    { title: "Sign in", said },
    html`${
      front.provider === undefined
        ? ""
        : html`<p><a class="button" href="/sign-in/provider?next=${encodeURIComponent(next)}">Sign in with your company’s account</a></p>`
    }
${front.provider?.only === true ? "" : passwordForm(next)}
<p class="faint">Accounts are made by whoever runs this desk, with “burin user”.</p>
${front.isTryOpen ? html`<p><a href="/try">Try order sheets before you send them</a></p>` : ""}`,
  );
}

function passwordForm(next: string): Markup {
  return html`<form method="post" action="/sign-in">
<input type="hidden" name="next" value="${next}">
<p><label for="user">User</label>
<input id="user" name="user" autocomplete="username" autocapitalize="none" required autofocus></p>
<p><label for="password">Password</label>
<input id="password" name="password" type="password" autocomplete="current-password" required></p>
<p><button class="main">Sign in</button></p>
</form>`;
}
