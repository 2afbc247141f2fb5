import type * as Client from "openid-client";

/** An OpenID Connect provider, as the settings name it. */
export interface ProviderSettings {
  readonly issuer: string;
  readonly clientId: string;
  readonly clientSecret: string;
}

/** What a browser keeps between leaving for the provider and coming back. */
export interface Leaving {
  readonly state: string;
  readonly nonce: string;
  readonly verifier: string;
}

/** Somebody else who says who comes. */
export interface Provider {
  /** Nobody comes in with a password. */
  readonly only: boolean;
  /** Where to send the browser, and what it keeps meanwhile. */
  readonly begin: (back: string) => Promise<{ readonly url: string; readonly leaving: Leaving }>;
  /** The proved e-mail address of whoever came back to this URL; undefined if the provider vouches for none. */
  readonly finish: (url: string, leaving: Leaving) => Promise<string | undefined>;
}

/**
 * Sign-in by the authorization code flow with PKCE (OpenID Connect Core 1.0, 3.1; RFC 7636). The provider is asked about
 * itself when somebody first signs in.
 */
export function openProvider({ issuer, clientId, clientSecret }: ProviderSettings, only: boolean): Provider {
  let found: Promise<{ readonly client: typeof Client; readonly config: Client.Configuration }> | undefined;
  const find = async () => {
    const client = await import("openid-client");
    const url = new URL(issuer);
    // A provider on this machine need not speak TLS.
    const isHere = url.protocol === "http:" && ["127.0.0.1", "localhost", "[::1]"].includes(url.hostname);
    const options = isHere ? { execute: [client.allowInsecureRequests] } : {};
    return { client, config: await client.discovery(url, clientId, clientSecret, undefined, options) };
  };
  const ready = () => {
    found ??= find().catch((cause: unknown) => {
      // It is asked again the next time.
      found = undefined;
      throw cause;
    });
    return found;
  };
  return {
    only,
    async begin(back) {
      const { client, config } = await ready();
      const leaving = {
        state: client.randomState(),
        nonce: client.randomNonce(),
        verifier: client.randomPKCECodeVerifier(),
      };
      const url = client.buildAuthorizationUrl(config, {
        redirect_uri: back,
        scope: "openid email",
        state: leaving.state,
        nonce: leaving.nonce,
        code_challenge: await client.calculatePKCECodeChallenge(leaving.verifier),
        code_challenge_method: "S256",
      });
      return { url: url.href, leaving };
    },
    async finish(url, { state, nonce, verifier }) {
      const { client, config } = await ready();
      const tokens = await client.authorizationCodeGrant(config, new URL(url), {
        expectedState: state,
        expectedNonce: nonce,
        pkceCodeVerifier: verifier,
        idTokenExpected: true,
      });
      const claims = tokens.claims();
      // Some providers put the address into the user info alone.
      const about =
        claims?.["email"] === undefined && claims !== undefined
          ? await client.fetchUserInfo(config, tokens.access_token, claims.sub)
          : claims;
      const { email, email_verified: isProved } = about ?? {};
      return typeof email === "string" && isProved === true ? email.toLowerCase() : undefined;
    },
  };
}
