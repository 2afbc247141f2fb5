import { AwsClient } from "aws4fetch";
import { type Blobs, shaOf } from "./blobs.ts";

/** A place for bytes on a server that speaks the S3 protocol. */
export interface S3Place {
  /** Address of the bucket, with a folder in it if there is one: "https://s3.quillgate.example/burin/desk". */
  readonly address: string;
  readonly region: string;
  readonly accessKey: string;
  readonly secretKey: string;
}

/** How long the server has for one request, in milliseconds. */
const patience = 60_000;

/** How often a request is repeated that the server could not serve (5xx, 429). */
const retries = 4;

/**
 * Bytes under their SHA-256 on any server that speaks the S3 protocol. An object is there whole or not at all, and the
 * same bytes put twice are one object.
 */
export function openS3Blobs({ address, region, accessKey, secretKey }: S3Place): Blobs {
  const client = new AwsClient({
    accessKeyId: accessKey,
    secretAccessKey: secretKey,
    service: "s3",
    region,
    retries,
  });
  const folder = address.replace(/\/+$/, "");

  /** Asks the server; a 404 is left to whoever asks. Throws what it says, without the address's keys. */
  async function ask(
    method: "PUT" | "GET" | "HEAD" | "DELETE",
    sha: string,
    body?: Uint8Array,
  ): Promise<Response> {
    const url = `${folder}/${sha.slice(0, 2)}/${sha}`;
    const response = await client.fetch(url, {
      method,
      signal: AbortSignal.timeout(patience),
      ...(body === undefined ? {} : { body: new Uint8Array(body) }),
    });
    if (response.ok || response.status === 404) return response;
    const words = await response.text();
    const code = /<Code>([^<]*)<\/Code>/.exec(words)?.[1] ?? "no code";
    throw new Error(`the store of bytes says ${response.status} ${code}`);
  }

  const has = async (sha: string): Promise<boolean> => (await ask("HEAD", sha)).ok;
  return {
    has,
    async put(bytes) {
      const sha = shaOf(bytes);
      if (await has(sha)) return sha;
      const { ok } = await ask("PUT", sha, bytes);
      if (!ok) throw new Error("the store of bytes has no such bucket");
      return sha;
    },
    async get(sha) {
      const response = await ask("GET", sha);
      if (!response.ok) throw new Error(`there are no bytes ${sha}`);
      return new Uint8Array(await response.arrayBuffer());
    },
    async remove(sha) {
      await ask("DELETE", sha);
    },
    /** The server's matter. */
    room: () => Promise.resolve(Number.MAX_SAFE_INTEGER),
  };
}
