import type { Server } from "node:http";
import { serve } from "@hono/node-server";
import { deskApp } from "./app.ts";
import type { Front } from "./front.ts";

/** Serves the page; gives its port, and what ends it. Rejects when the port cannot be had. */
export function serveDesk(
  front: Front,
  { host, port }: { readonly host: string; readonly port: number },
): Promise<{ readonly port: number; readonly close: () => Promise<void> }> {
  const { fetch } = deskApp(front);
  return new Promise((resolve, reject) => {
    const server = serve({ fetch, hostname: host, port }, (info) =>
      resolve({ port: info.port, close }),
    ) as Server;
    server.once("error", reject);
    const close = () =>
      new Promise<void>((done) => {
        server.close(() => done());
        server.closeAllConnections();
      });
  });
}
