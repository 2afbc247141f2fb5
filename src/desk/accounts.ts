import type { Hono } from "hono";
import { roles } from "../ports/accounts.ts";
import { fieldsOf, secretOf } from "./asked.ts";
import { type Env, type Front, Refused, visitorOf } from "./front.ts";
import { needs } from "./guard.ts";
import { accountsPage } from "./pages/accounts.ts";
import { hashPassword, lengths } from "./passwords.ts";

/** Letting people in, and shutting them out. */
export function accounts(app: Hono<Env>, front: Front): void {
  const { store, clock } = front.desk;
  app.get("/accounts", (c) => {
    needs(c, "administer");
    return accountsPage(c, front);
  });
  app.post("/accounts", async (c) => {
    needs(c, "administer");
    const field = await fieldsOf(c);
    const [user, name, password] = [field("user").toLowerCase(), field("name"), await secretOf(c)];
    const role = roles.find((one) => one === field("role"));
    if (!/^[a-z0-9._@+-]{1,80}$/.test(user) || name === "" || role === undefined)
      throw new Refused(400, "A user, a name and a role are needed.");
    if (password.length < lengths.least || password.length > lengths.most)
      throw new Refused(400, `A password has ${lengths.least} to ${lengths.most} characters.`);
    const account = { user, name, role, password: await hashPassword(password), isShut: false };
    await store.accounts.save(account, visitorOf(c).account.name, clock.now());
    return accountsPage(c, front, `${name} can come in.`);
  });
  app.post("/accounts/shut", async (c) => {
    needs(c, "administer");
    const account = await store.accounts.find((await fieldsOf(c))("user"));
    if (account === undefined) throw new Refused(404, "There is no such account.");
    if (account.user === visitorOf(c).account.user)
      throw new Refused(400, "Nobody shuts himself out: another administrator can, or burin user --shut.");
    await store.accounts.save({ ...account, isShut: true }, visitorOf(c).account.name, clock.now());
    return accountsPage(c, front, `${account.name} is shut out.`);
  });
}
