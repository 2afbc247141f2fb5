import { createInterface } from "node:readline";
import { table } from "../answer/table.ts";
import { hashPassword, lengths } from "../desk/passwords.ts";
import { roles } from "../ports/accounts.ts";
import { CannotRun, defineCommand } from "./command.ts";
import { configure, settingsOption } from "./configuration.ts";
import { openRecord } from "./record.ts";
import { systemClock } from "./system-clock.ts";

export const user = defineCommand({
  name: "user",
  words: [0, 1],
  details: `Asks for the password, or takes it as a line from the standard input. A user that is there already gets the new
password, keeps name and role where none is given, and has to sign in again. Roles, each with all before it: see (look), act (settle points,
write to senders), release (hand orders to engraving), administer (let others in).`,
  options: {
    name: {
      type: "string",
      takes: "NAME",
      tells: "the name in the record and in answers (default USER, for a new one)",
    },
    role: { type: "string", takes: "ROLE", tells: `${roles.join(", ")} (default see, for a new one)` },
    "no-password": {
      type: "boolean",
      tells: "the provider that the settings name vouches for USER, an e-mail address",
    },
    shut: { type: "boolean", tells: "shut this user out" },
    ...settingsOption,
  },
  async run([named], { name, role: chosen, shut, settings, "no-password": isVouched }, { out, err }) {
    const given = roles.find((one) => one === chosen);
    if (chosen !== undefined && given === undefined)
      throw new CannotRun(`“${chosen}” is no role; there are ${roles.join(", ")}`);
    const id = named?.toLowerCase();
    if (id !== undefined && !/^[a-z0-9._@+-]{1,80}$/.test(id))
      throw new CannotRun(`“${id}” cannot be a user: small letters, digits and . _ @ + - make one`);
    const store = await openRecord(await configure(settings), systemClock);
    try {
      if (id === undefined) {
        const all = await store.accounts.all();
        const rows = all.map((one) => [one.user, one.name, one.isShut ? "shut out" : one.role]);
        out(all.length === 0 ? "Nobody may come in." : table([["user", "name", "role"], ...rows]));
        return 0;
      }
      const known = await store.accounts.find(id);
      if (shut && known === undefined) {
        err(`There is no user ${id}.`);
        return 1;
      }
      const role = given ?? known?.role ?? "see";
      const account = shut
        ? { ...known, isShut: true }
        : {
            user: id,
            name: name?.trim() || known?.name || id,
            role,
            isShut: false,
            ...(isVouched ? {} : { password: await askPassword() }),
          };
      await store.accounts.save({ user: id, name: id, role, ...account }, "burin user", systemClock.now());
      out(shut ? `${id} is shut out.` : `${id} may come in as ${role}.`);
      return 0;
    } finally {
      await store.close();
    }
  },
});

/** The hash of a password that is typed, unseen, or given as a line. */
async function askPassword(): Promise<string> {
  const { stdin, stderr } = process;
  const typed = createInterface({ input: stdin, output: stderr, terminal: stdin.isTTY });
  if (stdin.isTTY) {
    stderr.write(`Password (${lengths.least} characters at least): `);
    // What is typed is not shown.
    Object.assign(typed, { _writeToOutput: () => undefined });
  }
  const { value: password = "" } = await typed[Symbol.asyncIterator]().next();
  typed.close();
  if (stdin.isTTY) stderr.write("\n");
  if (password.length < lengths.least || password.length > lengths.most)
    throw new CannotRun(`a password has ${lengths.least} to ${lengths.most} characters`);
  return hashPassword(password);
}
