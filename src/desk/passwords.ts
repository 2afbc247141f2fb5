import { argon2, randomBytes, timingSafeEqual } from "node:crypto";
import { promisify } from "node:util";

/** The least that OWASP's Password Storage Cheat Sheet asks of Argon2id: 19 MiB, two passes, one lane. From memory. */
const cost = { memory: 19_456, passes: 2, parallelism: 1, tagLength: 32 } as const;

/** No password is shorter (NIST SP 800-63B, 5.1.1.2 asks for 8 at least; from memory), and none longer. */
export const lengths = { least: 10, most: 200 } as const;

const derive = promisify(argon2);

/** A password as it is kept: Argon2id (RFC 9106) with a salt of its own, "argon2id$19456$2$<salt>$<tag>". */
export async function hashPassword(password: string): Promise<string> {
  const nonce = randomBytes(16);
  const tag = await tagOf(password, nonce, cost);
  return ["argon2id", cost.memory, cost.passes, nonce.toString("base64url"), tag.toString("base64url")].join(
    "$",
  );
}

/** Whether a password is the one that was kept. Without a kept one it takes as long, and is none. */
export async function isPassword(password: string, kept: string | undefined): Promise<boolean> {
  const [, memory, passes, salt = "", tag = ""] = (kept ?? "").split("$");
  const known = {
    ...cost,
    ...(kept === undefined ? {} : { memory: Number(memory), passes: Number(passes) }),
  };
  const nonce = kept === undefined ? Buffer.alloc(16) : Buffer.from(salt, "base64url");
  const made = await tagOf(password.slice(0, lengths.most), nonce, known);
  const wanted = Buffer.from(tag, "base64url");
  return kept !== undefined && wanted.length === made.length && timingSafeEqual(wanted, made);
}

function tagOf(
  password: string,
  nonce: Buffer,
  { memory, passes }: { readonly memory: number; readonly passes: number },
): Promise<Buffer> {
  // The same letters can be typed as different bytes (Unicode normalisation, NIST SP 800-63B).
  const message = password.normalize("NFKC");
  const { parallelism, tagLength } = cost;
  return derive("argon2id", { message, nonce, memory, passes, parallelism, tagLength });
}
