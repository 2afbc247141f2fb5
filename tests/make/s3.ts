import S3rver from "@20minutes/s3rver";
import { onTestFinished } from "vitest";
import type { S3Place } from "../../src/store/s3-blobs.ts";
import { temporaryFolder } from "./desk.ts";

/** A server that speaks the S3 protocol, with a bucket, until the test ends. It refuses what is wrongly signed. */
export async function s3Server(): Promise<S3Place> {
  const server = new S3rver({
    port: 0,
    address: "127.0.0.1",
    silent: true,
    directory: temporaryFolder(),
    configureBuckets: [{ name: "burin", configs: [] }],
  });
  const { port } = await server.run();
  onTestFinished(() => server.close());
  return {
    address: `http://127.0.0.1:${port}/burin/desk`,
    region: "us-east-1",
    accessKey: "S3RVER",
    secretKey: "S3RVER",
  };
}
