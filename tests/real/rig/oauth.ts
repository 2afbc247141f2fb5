import { createServer, type IncomingMessage } from "node:http";

/** A token server of the tests' own: hands out tokens, and tells Dovecot whose they are. */
export interface OAuth {
  readonly tokenUrl: string;
  /** Grants served so far, in order. */
  readonly granted: readonly string[];
  /** Seconds that the next tokens hold. */
  lifetime: number;
  /** No token given so far is good any more. */
  readonly revokeAll: () => void;
  readonly stop: () => Promise<void>;
}

export const oauthClient = { id: "desk", secret: "desk-plainly", refreshToken: "first-refresh" };

/** RFC 6749 §4.4 (client credentials) and §6 (refresh token), RFC 7662 (introspection), for one mailbox. */
export async function startOAuth(port: number, user: string): Promise<OAuth> {
  const good = new Map<string, number>();
  const granted: string[] = [];
  let refreshToken = oauthClient.refreshToken;
  const oauth = { lifetime: 3600 };

  function grant(form: URLSearchParams): [number, object] {
    if (form.get("client_id") !== oauthClient.id || form.get("client_secret") !== oauthClient.secret)
      return [401, { error: "invalid_client" }];
    const kind = form.get("grant_type") ?? "";
    if (kind === "refresh_token" && form.get("refresh_token") !== refreshToken)
      return [400, { error: "invalid_grant" }];
    granted.push(kind);
    const token = `token-${granted.length}-of-${port}`;
    good.set(token, Date.now() + oauth.lifetime * 1000);
    // a refresh token is good once: the next one comes with the answer
    if (kind === "refresh_token") refreshToken = `refresh-${granted.length}`;
    return [
      200,
      {
        access_token: token,
        token_type: "Bearer",
        expires_in: oauth.lifetime,
        ...(kind === "refresh_token" ? { refresh_token: refreshToken } : {}),
      },
    ];
  }

  function introspect(token: string): [number, object] {
    return [200, (good.get(token) ?? 0) > Date.now() ? { active: true, username: user } : { active: false }];
  }

  const server = createServer((request, response) => {
    void body(request).then((text) => {
      const form = new URLSearchParams(text);
      const [status, answer] = request.url === "/token" ? grant(form) : introspect(form.get("token") ?? "");
      return response.writeHead(status, { "content-type": "application/json" }).end(JSON.stringify(answer));
    });
  });
  await new Promise<void>((resolve) => server.listen(port, "127.0.0.1", resolve));
  return Object.assign(oauth, {
    tokenUrl: `http://127.0.0.1:${port}/token`,
    granted,
    revokeAll: () => good.clear(),
    stop: async () => {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  });
}

async function body(request: IncomingMessage): Promise<string> {
  let text = "";
  for await (const chunk of request) text += String(chunk);
  return text;
}
