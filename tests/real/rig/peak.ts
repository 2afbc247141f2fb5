import { readFileSync } from "node:fs";
import { imapMailbox } from "../../../src/mail/imap.ts";
import { readOnce, silent } from "./desk.ts";

// Fetches the one letter of a mailbox in a process of its own and prints how much memory that took at most.
// Arguments: port, user, password, file with the authority.
const [port, user = "", password = "", authority = ""] = process.argv.slice(2);
const mailbox = imapMailbox({
  name: "big",
  server: {
    host: "localhost",
    port: Number(port),
    security: "tls",
    user,
    secret: { password },
    authority: readFileSync(authority, "utf8"),
  },
  folder: "INBOX",
  begin: new Date(0),
  shelves: {},
  log: silent,
  clock: { now: () => new Date() },
  chance: Math.random,
});
const [mail] = await readOnce(mailbox);
const before = process.resourceUsage().maxRSS;
const start = performance.now();
const bytes = await mail?.bytes();
console.log(
  JSON.stringify({
    bytes: bytes?.length,
    ms: Math.round(performance.now() - start),
    beforeMB: Math.round(before / 1024),
    peakMB: Math.round(process.resourceUsage().maxRSS / 1024),
  }),
);
await mailbox.close();
