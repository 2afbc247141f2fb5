import { z } from "zod";
import type { Clock } from "../ports/clock.ts";

/** How a token server is asked (RFC 6749). */
export interface OAuth {
  readonly tokenUrl: string;
  readonly clientId: string;
  readonly clientSecret?: string;
  readonly scope?: string;
  /** With one: the refresh-token grant (§6). Without: client credentials (§4.4). */
  readonly refreshToken?: string;
  /** Called with the next refresh token, if the server gives one. The old one may be void from then on. */
  readonly keepRefreshToken?: (token: string) => Promise<void>;
}

export interface Tokens {
  /** An access token that will hold for a while. Rejects with what the token server said. */
  readonly token: () => Promise<string>;
  /** The mail server refused this token, so it is not given again. */
  readonly refuse: (token: string) => void;
}

const timeLimitMs = 20_000;

/** A token this near its end is no longer used. Signing in takes time, and the server's clock may differ. */
const marginMs = 60_000;

/** How long a token is kept if its server does not say. `expires_in` is only recommended (RFC 6749 §5.1). */
const unsaidLifetimeSeconds = 600;

const granted = z.object({
  access_token: z.string().min(1),
  expires_in: z.coerce.number().positive().default(unsaidLifetimeSeconds),
  refresh_token: z.string().min(1).optional(),
});

const refusal = z.object({ error: z.string(), error_description: z.string().optional() });

/** Tokens as they are needed. Each is used until shortly before it expires, and only one is asked for at a time. */
export function tokenSource(oauth: OAuth, clock: Clock): Tokens {
  let refreshToken = oauth.refreshToken;
  let kept: { readonly token: string; readonly until: number } | undefined;
  let asking: Promise<string> | undefined;

  async function ask(): Promise<string> {
    const now = clock.now().getTime();
    const answer = await requestToken(oauth, refreshToken);
    const lifetimeMs = answer.expires_in * 1000;
    kept = { token: answer.access_token, until: now + lifetimeMs - Math.min(marginMs, lifetimeMs / 2) };
    if (answer.refresh_token !== undefined && answer.refresh_token !== refreshToken) {
      refreshToken = answer.refresh_token;
      await oauth.keepRefreshToken?.(refreshToken);
    }
    return answer.access_token;
  }

  return {
    async token() {
      if (kept !== undefined && clock.now().getTime() < kept.until) return kept.token;
      asking ??= ask().finally(() => {
        asking = undefined;
      });
      return asking;
    },
    refuse(token) {
      if (kept?.token === token) kept = undefined;
    },
  };
}

async function requestToken(
  oauth: OAuth,
  refreshToken: string | undefined,
): Promise<z.output<typeof granted>> {
  const form = new URLSearchParams({ client_id: oauth.clientId });
  if (oauth.clientSecret !== undefined) form.set("client_secret", oauth.clientSecret);
  if (oauth.scope !== undefined) form.set("scope", oauth.scope);
  form.set("grant_type", refreshToken === undefined ? "client_credentials" : "refresh_token");
  if (refreshToken !== undefined) form.set("refresh_token", refreshToken);

  let response: Response;
  let body: unknown;
  try {
    response = await fetch(oauth.tokenUrl, {
      method: "POST",
      body: form,
      headers: { accept: "application/json" },
      // The form holds secrets. It goes to the server named in the settings and to no other.
      redirect: "error",
      signal: AbortSignal.timeout(timeLimitMs),
    });
    body = await response.json();
  } catch (cause) {
    throw new Error("the token server gave no answer that can be read", { cause });
  }
  const answer = granted.safeParse(body);
  if (response.ok && answer.success) return answer.data;
  const said = refusal.safeParse(body);
  const reason = said.success ? `${said.data.error} ${said.data.error_description ?? ""}`.trim() : "no token";
  throw new Error(`the token server answered ${response.status}: ${reason}`);
}
