import MailComposer from "nodemailer/lib/mail-composer";
import { builder } from "../../../src/demo/build.ts";
import { sheets, trade } from "../../make/config.ts";
import { desk } from "../rig/rig.ts";

const build = builder({ ...trade, sheets, raw: () => Promise.reject(new Error("no raw file here")) });

/** A filled sheet: position 1 of a plate of four, of the order named. */
export function filledSheet(order: string): Promise<Uint8Array> {
  return build({
    file: "S-104 pos 1.pdf",
    like: "larkspur-device",
    fill: { order, position: "1" },
    legends: { "1": ["ENTRY"], "2": ["FOYER"], "3": ["DIM"], "4": ["ALL", "OFF"] },
    plain: [],
  });
}

/** A letter to the desk; its name is its subject and, with the sender's domain, its Message-ID. */
export function letterBytes(
  name: string,
  { from = "Alice <alice@brightwire.example>", sheet }: { from?: string; sheet?: Uint8Array } = {},
): Promise<Uint8Array> {
  const domain = from.split("@").at(-1)?.replace(">", "");
  return new MailComposer({
    from,
    to: desk,
    messageId: `<${name}@${domain}>`,
    date: new Date("2026-03-02T09:00:00Z"),
    subject: name,
    text: `Please find our sheets (${name}).`,
    attachments: sheet === undefined ? [] : [{ filename: "S-104 pos 1.pdf", content: Buffer.from(sheet) }],
  })
    .compile()
    .build();
}
