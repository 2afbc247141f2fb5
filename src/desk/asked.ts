import { getConnInfo } from "@hono/node-server/conninfo";
import type { Ask } from "./front.ts";

/** What stands in the fields of a form, each as text; what is not given is "". */
export type Fields = (name: string) => string;

/** The fields of a form, trimmed; nothing in them breaks a line of a header or of the record. */
export async function fieldsOf(c: Ask): Promise<Fields> {
  const body = await c.req.parseBody();
  return (name) => {
    const value = body[name];
    return typeof value === "string"
      ? value
          .replaceAll(/[\p{Cc}\p{Cf}]+/gu, " ")
          .trim()
          .slice(0, 2_000)
      : "";
  };
}

/** The password of a form, as it was typed. */
export async function secretOf(c: Ask): Promise<string> {
  const { password } = await c.req.parseBody();
  return typeof password === "string" ? password : "";
}

/** From which address a browser comes. */
export function addressOf(c: Ask): string {
  return getConnInfo(c).remote.address ?? "";
}
