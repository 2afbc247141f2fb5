import { createServer } from "node:http";
import { expect, onTestFinished, test } from "vitest";
import { type OAuth, tokenSource } from "../../src/mail/oauth.ts";

/** A token server that gives these answers in turn, and a clock to set. */
async function tokenServer(...answers: (readonly [number, string])[]) {
  const asked: URLSearchParams[] = [];
  const server = createServer((request, response) => {
    let text = "";
    request.on("data", (chunk: Buffer) => {
      text += chunk.toString();
    });
    request.on("end", () => {
      asked.push(new URLSearchParams(text));
      const [status, body] = answers[asked.length - 1] ?? [500, ""];
      response.writeHead(status, status === 302 ? { location: body } : {}).end(body);
    });
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  onTestFinished(() => void server.close());
  const address = server.address();
  if (address === null || typeof address === "string") throw new Error("no port");
  const clock = { at: new Date(0), now: () => clock.at };
  const url = `http://127.0.0.1:${address.port}/`;
  const source = (over: Partial<OAuth> = {}) =>
    tokenSource({ tokenUrl: url, clientId: "desk", clientSecret: "desk-plainly", ...over }, clock);
  return { asked, clock, source, url };
}

const token = (name: string, more: object = {}) =>
  [200, JSON.stringify({ access_token: name, expires_in: 3600, ...more })] as const;

test("a token is kept until a minute before it expires", async () => {
  const { asked, clock, source } = await tokenServer(token("one"), token("two"));
  const tokens = source();
  expect(await tokens.token()).toBe("one");
  clock.at = new Date(3_539_000);
  expect(await tokens.token()).toBe("one");
  clock.at = new Date(3_540_000);
  expect(await tokens.token()).toBe("two");
  expect(asked).toHaveLength(2);
});

test("a token that holds for half a minute is kept for half of that", async () => {
  const { clock, source } = await tokenServer(token("one", { expires_in: 30 }), token("two"));
  const tokens = source();
  await tokens.token();
  clock.at = new Date(14_000);
  expect(await tokens.token()).toBe("one");
  clock.at = new Date(15_000);
  expect(await tokens.token()).toBe("two");
});

test("those who ask at the same time share one request", async () => {
  const { asked, source } = await tokenServer(token("one"));
  const tokens = source();
  expect(await Promise.all([tokens.token(), tokens.token()])).toEqual(["one", "one"]);
  expect(asked).toHaveLength(1);
});

test("a refused token is not given again, and an older refusal does no harm", async () => {
  const { source } = await tokenServer(token("one"), token("two"));
  const tokens = source();
  await tokens.token();
  tokens.refuse("one");
  expect(await tokens.token()).toBe("two");
  tokens.refuse("one");
  expect(await tokens.token()).toBe("two");
});

test("a client signs in by itself", async () => {
  const { asked, source } = await tokenServer(token("one"));
  await source({ scope: "mail" }).token();
  expect(Object.fromEntries(asked[0] ?? [])).toEqual({
    grant_type: "client_credentials",
    client_id: "desk",
    client_secret: "desk-plainly",
    scope: "mail",
  });
});

test("a refresh token is exchanged, and the next one is used and kept", async () => {
  const { asked, source } = await tokenServer(token("one", { refresh_token: "r2" }), token("two"));
  const kept: string[] = [];
  const tokens = source({
    refreshToken: "r1",
    keepRefreshToken: async (next) => void kept.push(next),
  });
  await tokens.token();
  tokens.refuse("one");
  await tokens.token();
  expect(asked.map((form) => [form.get("grant_type"), form.get("refresh_token")])).toEqual([
    ["refresh_token", "r1"],
    ["refresh_token", "r2"],
  ]);
  expect(kept).toEqual(["r2"]);
});

test.each([
  ["says why", 400, '{"error":"invalid_grant","error_description":"expired"}', /400: invalid_grant expired/],
  ["says nothing", 200, "{}", /200: no token/],
  ["speaks something else", 200, "<html>", /no answer that can be read/],
])("a token server that %s is an error, and is asked again next time", async (_, status, body, words) => {
  const { source } = await tokenServer([status, body], token("one"));
  const tokens = source();
  await expect(tokens.token()).rejects.toThrow(words);
  expect(await tokens.token()).toBe("one");
});

test("secrets do not follow a redirection", async () => {
  const other = await tokenServer(token("stolen"));
  const { source } = await tokenServer([302, other.url]);
  await expect(source().token()).rejects.toThrow(/no answer/);
  expect(other.asked).toEqual([]);
});
