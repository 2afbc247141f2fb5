import { html } from "hono/html";
import { roles } from "../../ports/accounts.ts";
import { type Ask, type Front, roleWords, visitorOf } from "../front.ts";
import { ownForm, page } from "../page.ts";
import { lengths } from "../passwords.ts";

/** Who may come in. */
export async function accountsPage(c: Ask, front: Front, said?: string): Promise<Response> {
  const visitor = visitorOf(c);
  const accounts = await front.desk.store.accounts.all();
  return page(
    c,
    front,
    { title: "Accounts", said },
    html`<div class="wide"><table class="stack"><tr><th>User</th><th>Name</th><th>Role</th><th>What can be done</th></tr>
${accounts.map(
  ({
    user,
    name,
    role,
    isShut,
  }) => html`<tr><td data-label="User">${user}</td><td data-label="Name">${name}</td>
<td data-label="Role">${isShut ? "shut out" : `${role}: ${roleWords[role]}`}</td>
<td>${
    isShut || user === visitor.account.user
      ? ""
      : html`<form method="post" action="/accounts/shut">${ownForm(visitor)}<input type="hidden" name="user" value="${user}"><button aria-label="Shut out ${user}">Shut out</button></form>`
  }</td></tr>`,
)}</table></div>
<h2>Let somebody in, or change an account</h2>
<form method="post" action="/accounts">${ownForm(visitor)}
<p><label for="user">User, as it is typed at sign-in</label><input id="user" name="user" autocapitalize="none" autocomplete="off" pattern="[a-z0-9._@+-]{1,80}" required></p>
<p><label for="name">Name, as it stands in the record and in answers</label><input id="name" name="name" autocomplete="off" maxlength="80" required></p>
<p><label for="role">Role</label><select id="role" name="role">${roles.map((role) => html`<option value="${role}">${role}: ${roleWords[role]}</option>`)}</select></p>
<p><label for="password">Password, ${lengths.least} characters at least</label><input id="password" name="password" type="password" autocomplete="new-password" minlength="${lengths.least}" maxlength="${lengths.most}" required></p>
<p><button class="main">Save</button></p></form>`,
  );
}
