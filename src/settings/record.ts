import { z } from "zod";
import { wherever } from "../yaml/yaml.ts";

const text = z.string().min(1);

/** Whether a record is on a PostgreSQL server; else it is a folder. */
export function isOnServer(record: string): boolean {
  return /^postgres(?:ql)?:/.test(record);
}

/** The folder of a record that is not on a server. */
export function folderOf(record: string): string {
  return record.replace(/^sqlite:/, "");
}

/** Where a record lies: a folder, with or without "sqlite:" before it, or "postgres://USER@HOST/DATABASE". */
export const recordAddress = text.superRefine((record, context) => {
  if (!isOnServer(record)) {
    if (/^[a-z0-9+]+:\/\//.test(record) || folderOf(record) === "")
      context.addIssue("neither a folder, sqlite:FOLDER, nor postgres://USER@HOST/DATABASE");
    return;
  }
  const url = URL.parse(record);
  if (url === null || url.pathname.length < 2)
    context.addIssue("not an address such as postgres://USER@HOST/DATABASE");
  else if (url.password !== "" || url.searchParams.has("password"))
    context.addIssue("has a password in it; put that into record_password_file or record_password_env");
});

/** A server that speaks the S3 protocol, for the bytes of a record. */
export const bytesSettings = z
  .strictObject({
    /** The bucket, with a folder in it if there is to be one: "https://s3.quillgate.example/burin/desk". */
    s3: z.url({ protocol: /^https?$/, error: "not an address such as https://s3.quillgate.example/burin" }),
    region: text.default("us-east-1"),
    access_key: text,
    secret_key_env: text.optional(),
    secret_key_file: text.optional(),
  })
  .refine((it) => (it.secret_key_env === undefined) !== (it.secret_key_file === undefined), {
    error: "needs secret_key_env or secret_key_file",
    ...wherever({}),
  });
