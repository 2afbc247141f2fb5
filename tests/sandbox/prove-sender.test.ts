import { generateKeyPairSync } from "node:crypto";
import { existsSync } from "node:fs";
import { dkimSign } from "mailauth";
import { createTransport } from "nodemailer";
import { afterAll, describe, expect, test } from "vitest";
import { takeLetter } from "../../src/intake/take.ts";
import { tryNameServers } from "../../src/mail/connect.ts";
import { openPool } from "../../src/sandbox/pool.ts";
import { proveSender } from "../../src/sandbox/prove-sender.ts";
import { keepingSender, temporaryDesk } from "../make/desk.ts";
import { startNameServer } from "../make/name-server.ts";

const { publicKey, privateKey } = generateKeyPairSync("rsa", {
  modulusLength: 2048,
  publicKeyEncoding: { type: "spki", format: "der" },
  privateKeyEncoding: { type: "pkcs8", format: "pem" },
});

const texts = {
  // RFC 8463 appendix A.2
  "brisbane._domainkey.football.example.com":
    "v=DKIM1; k=ed25519; p=11qYAYKxCrfVS/7TyWQHOg7hcvPapiMlrwIaaPcHURo=",
  "here._domainkey.brightwire.example": `v=DKIM1; k=rsa; p=${publicKey.toString("base64")}`,
  "here._domainkey.fernhill.example": `v=DKIM1; k=rsa; p=${publicKey.toString("base64")}`,
  "brightwire.example": "v=spf1 ip4:192.0.2.7 -all",
  "_dmarc.brightwire.example": "v=DMARC1; p=reject",
  "fernhill.example": "v=spf1 ip4:192.0.2.7 -all",
  "mail.fernhill.example": "v=spf1 ip4:192.0.2.7 -all",
  "here._domainkey.mail.fernhill.example": `v=DKIM1; k=rsa; p=${publicKey.toString("base64")}`,
  example: "v=spf1 ip4:192.0.2.7 -all",
};

// RFC 8463 appendix A.3, with the signature by Ed25519 alone
const published = `DKIM-Signature: v=1; a=ed25519-sha256; c=relaxed/relaxed;
 d=football.example.com; i=@football.example.com;
 q=dns/txt; s=brisbane; t=1528637909; h=from : to :
 subject : date : message-id : from : subject : date;
 bh=2jUSOH9NhtVGCQWNr9BrIAPreKQjO6Sn7XIkfJVOzv8=;
 b=/gCrinpcQOoIfuHNQIbq4pgh9kyIK3AQUdt9OdqQehSwhEIug4D11Bus
 Fa3bT3FY5OsU7ZbnKELq+eXdp1Q1Dw==
From: Joe SixPack <joe@football.example.com>
To: Suzie Q <suzie@shopping.example.net>
Subject: Is dinner ready?
Date: Fri, 11 Jul 2003 21:00:37 -0700 (PDT)
Message-ID: <20030712040037.46341.5F8J@football.example.com>

Hi.

We lost the game.  Are you hungry yet?

Joe.
`.replaceAll("\n", "\r\n");

const ines = "ines@brightwire.example";
const plain = `From: ${ines}\r\nTo: orders@quillgate.example\r\nSubject: Stations\r\n\r\nHello\r\n`;

/** A letter of Ines's domain, or of another, as another program signs it. */
async function signed(
  domain = "brightwire.example",
  from = `ines@${domain}`,
  subject = "Stations",
): Promise<string> {
  const transport = createTransport({
    streamTransport: true,
    buffer: true,
    newline: "windows",
    dkim: { domainName: domain, keySelector: "here", privateKey },
  });
  const { message } = await transport.sendMail({
    from,
    to: "orders@quillgate.example",
    subject,
    text: "Hello",
  });
  return Buffer.from(message as Uint8Array).toString();
}

/** As it lies in the mailbox after one server of ours has taken it in from this address. */
function arrived(letter: string, ip: string, path = ines): string {
  return `Return-Path: <${path}>\r\nReceived: from mail.brightwire.example (mail.brightwire.example [${ip}])\r\n by mx.quillgate.example; Mon, 9 Nov 2026 09:00:00 -0600\r\n${letter}`;
}

describe.skipIf(!existsSync("/usr/sbin/dnsmasq"))("a sender of whom the name servers are asked", async () => {
  const server = await startNameServer(texts);
  const reader = openPool({ log: { info() {}, warn() {} }, processes: 1 });
  afterAll(async () => {
    await reader.close();
    await server.stop();
  });
  const ask = (letter: string, from = ines, servers = [server.address]) =>
    proveSender(Buffer.from(letter), { from, lines: 1, servers });

  test("is proved by the published signature, and not when a letter of the text is another", async () => {
    const joe = "joe@football.example.com";
    expect(await ask(published, joe)).toBe("pass");
    expect(await ask(published.replace("lost", "last"), joe)).toBe("none");
    expect(await ask(published, "joe@other.example")).toBe("fail");
  });

  test("is proved by a signature that another program made", async () => {
    expect(await ask(await signed())).toBe("pass");
    expect(await ask(await signed("fernhill.example"), "ines@fernhill.example")).toBe("pass");
    // One that is signed with its words about signatures.
    const subject = "Re: DKIM-Signature: what is that?";
    expect(await ask(await signed("brightwire.example", ines, subject))).toBe("pass");
  });

  test("is refuted by a domain that lets through only what it vouches for", async () => {
    expect(await ask((await signed()).replace("Hello", "Hallo"))).toBe("fail");
    expect(await ask(plain)).toBe("fail");
    const others = (await signed("fernhill.example")).replace("From: ines@fernhill", "From: ines@brightwire");
    expect(await ask(others)).toBe("fail");
  });

  test("is proved by the address that our own server was spoken to from", async () => {
    expect(await ask(arrived(plain, "192.0.2.7"))).toBe("pass");
    expect(await ask(arrived(plain, "192.0.2.8"))).toBe("fail");
    // what stands below our own line, the sender may have written
    expect(await ask(arrived(arrived(plain, "192.0.2.7"), "192.0.2.8"))).toBe("fail");
    const local = "Received: by mx.quillgate.example; Mon, 9 Nov 2026 09:00:00 -0600\r\n";
    expect(await ask(local + arrived(plain, "192.0.2.7"))).toBe("fail");
  });

  test("is not proved by a signature behind whose end something was added", async () => {
    const letter = plain.replaceAll("brightwire", "fernhill");
    const key = { signingDomain: "fernhill.example", selector: "here", privateKey };
    const { signatures } = await dkimSign(letter, {
      ...key,
      signatureData: [{ ...key, maxBodyLength: 5 }],
    });
    expect(signatures).toContain("l=5;");
    expect(
      await ask(signatures + letter.replace("Hello", "Hello\r\nand more"), "ines@fernhill.example"),
    ).toBe("fail");
  });

  // All of these are refuted when they come plainly.
  describe("a forger who", () => {
    const evil = { signingDomain: "evil.example", selector: "here", privateKey };
    const sign = (line: string): string =>
      `DKIM-Signature: v=1; a=rsa-sha256; c=relaxed/relaxed; ${line}; h=from; bh=AAAA; b=BBBB\r\n`;

    test("puts findings of his own into a return path is refuted", async () => {
      const path = '"a\\";dmarc=pass;b\\""@evil.example';
      expect(await ask(arrived(sign("d=evil.example; s=x\\") + plain, "192.0.2.66", path))).toBe("fail");
      expect(await ask(arrived(sign('d=\\; s="x(="') + plain, "192.0.2.66"))).toBe("fail");
    });

    test("signs a part of the letter as another domain is refuted", async () => {
      const { signatures } = await dkimSign(plain, {
        ...evil,
        signatureData: [{ ...evil, maxBodyLength: 2 }],
      });
      expect(await ask(signatures + plain)).toBe("fail");
    });

    test("writes a return path below our server's own line is refuted", async () => {
      const line =
        "Received: from x (x [192.0.2.7]) by mx.quillgate.example; Mon, 9 Nov 2026 09:00:00 -0600\r\n";
      expect(await ask(`${line}Return-Path: <${ines}>\r\n${plain}`)).toBe("fail");
    });

    test.each([
      ["no From", plain.replace("From", "X-From")],
      ["a From that other programs read otherwise", plain.replace(ines, `${ines}\r\n<x@evil.example>`)],
    ])("sends a letter with %s is refuted", async (_, letter) => {
      expect(await ask(letter)).toBe("fail");
    });

    test("signs twice at once is refuted without asking the second", async () => {
      const twice = sign("d=brightwire.example; d=slower.example; s=x");
      expect(await ask(arrived(twice + plain, "192.0.2.66"))).toBe("fail");
      expect(server.asked()).not.toContain("slower.example");
    });

    test("names domains whose servers do not answer is refuted without asking them", async () => {
      const slow = ["d1", "d2", "d3"].map((name) => sign(`d=${name}.slow.example; s=x`)).join("");
      expect(await ask(arrived(slow + plain, "192.0.2.66", "eve@d4.slow.example"))).toBe("fail");
      expect(server.asked()).toContain("_dmarc.brightwire.example");
      expect(server.asked()).not.toContain("slow.example");
    });

    test.each([
      ["as its greeting", "from [192.0.2.7] (HELO [192.0.2.7]) (192.0.2.66) by mx.quillgate.example"],
      ["behind its address", "from x (192.0.2.66 ident=[192.0.2.7]) by mx.quillgate.example"],
      [
        "in a greeting with brackets",
        "from x([192.0.2.7]) (evil.example [192.0.2.66]) by mx.quillgate.example",
      ],
    ])("gives an address of another %s proves nothing", async (_, line) => {
      const proof = await ask(`Return-Path: <${ines}>\r\nReceived: ${line}\r\n${plain}`);
      // neither is answered
      expect(["fail", "temporary"]).toContain(proof);
    });
  });

  test.each([
    [
      "192.0.2.7",
      "from mail.brightwire.example (192.0.2.7) by mx.quillgate.example with Microsoft SMTP Server",
    ],
    ["192.0.2.7", "from [192.0.2.7] (helo=mail.brightwire.example) by mx.quillgate.example with esmtp"],
    ["192.0.2.7", "from mail ([192.0.2.7] helo=mail.brightwire.example) by mx.quillgate.example"],
  ])("is proved by the address %s wherever the server writes it: %s", async (_, line) => {
    expect(await ask(through(line))).toBe("pass");
    expect(await ask(through(line.replaceAll("192.0.2.7", "192.0.2.8")))).toBe("fail");
  });

  /** A letter that came to our server by this line, and from there with a return path. */
  const through = (line: string, letter = plain): string =>
    `Return-Path: <${ines}>\r\nReceived: ${line}\r\n${letter}`;

  test.each([
    [
      "a name that begins like a greeting",
      "from mail (helogate.example [192.0.2.7]) by mx.quillgate.example",
      "pass",
    ],
    [
      "the greeting where the name stands",
      "from mail (helo [192.0.2.7]) by mx.quillgate.example",
      "temporary",
    ],
    ["a number that is no address", "from mail (mail [192.0.2.777]) by mx.quillgate.example", "temporary"],
    ["an address of the newer kind", "from mail (mail [IPv6:2001:db8::7]) by mx.quillgate.example", "fail"],
    ["an address without a server", "from mail (192.0.2.7) via mx.quillgate.example", "temporary"],
    ["a greeting without a server", "from [192.0.2.7] (helo=mail) via mx.quillgate.example", "temporary"],
    ["words before it", "with esmtp from mail (mail [192.0.2.7]) by mx.quillgate.example", "temporary"],
    ["words before it", "with esmtp from mail (192.0.2.7) by mx.quillgate.example", "temporary"],
    ["words before it", "with esmtp from [192.0.2.7] (helo=mail) by mx.quillgate.example", "temporary"],
  ])("our server's line with %s: %s", async (_, line, proof) => {
    expect(await ask(through(line))).toBe(proof);
  });

  test("has no return path where our server has written no line", async () => {
    expect(await ask(`Return-Path: <${ines}>\r\n${plain}`)).toBe("fail");
  });

  test("is a forger where nobody can read who spoke to our server, but a signature is wrong", async () => {
    const local = "by mx.quillgate.example with LMTP; Mon, 9 Nov 2026 09:00:00 -0600";
    expect(await ask(through(local, (await signed()).replace("Hello", "Hallo")))).toBe("fail");
    // A tag that ends in d names no signer.
    const line = "D = brightwire.example ; v=1; a=rsa-sha256; bd=x; s=here; h=from; bh=AAAA; b=BBBB";
    expect(await ask(through(local, `DKIM-Signature : ${line}\r\n${plain}`))).toBe("fail");
    expect(
      await ask(through(local, `DKIM-Signature: ${line.replace("brightwire", "evil")}\r\n${plain}`)),
    ).toBe("temporary");
  });

  test("is the same however her domain is written", async () => {
    const loud = "ines@BrightWire.example";
    expect(await ask(await signed("brightwire.example", loud), loud)).toBe("pass");
    expect(await ask(arrived(plain.replace(ines, loud), "192.0.2.7", loud), loud)).toBe("pass");
  });

  test("is not proved by a signature of a kind that anybody can forge", async () => {
    const key = { signingDomain: "brightwire.example", selector: "here", privateKey, algorithm: "rsa-sha1" };
    const { signatures } = await dkimSign(plain, { ...key, signatureData: [key] });
    expect(signatures).toContain("a=rsa-sha1;");
    expect(await ask(signatures + plain)).toBe("fail");
  });

  test("is not asked about for what stations do on a letter's way, or for pictures of domains", async () => {
    const seal = (name: string, rest: string) => `ARC-${name}: i=1; ${rest}\r\n`;
    const chain =
      seal("Seal", "a=rsa-sha256; t=1; cv=none; d=arc.slow.example; s=x; b=AAAA") +
      seal(
        "Message-Signature",
        "a=rsa-sha256; c=relaxed/relaxed; d=arc.slow.example; s=x; h=from; bh=AAAA; b=AAAA",
      ) +
      seal("Authentication-Results", "mx.slow.example; none");
    expect(await ask(chain + (await signed()))).toBe("pass");
    expect(server.asked()).not.toContain("arc.slow.example");
    expect(server.asked()).not.toContain("_bimi");
  });

  describe("of a domain that says nothing of its letters", () => {
    const fern = "ines@fernhill.example";
    const letter = plain.replace(ines, fern);

    test("is proved by the domain's own address, and not by that of a neighbour", async () => {
      expect(await ask(arrived(letter, "192.0.2.7", fern), fern)).toBe("pass");
      expect(await ask(arrived(letter, "192.0.2.8", fern), fern)).toBe("none");
      expect(await ask(arrived(letter, "192.0.2.7", "ines@mail.fernhill.example"), fern)).toBe("none");
      expect(await ask(arrived(letter, "192.0.2.7"), fern)).toBe("none");
    });

    test("is not proved by a neighbour's signature", async () => {
      expect(await ask(await signed("mail.fernhill.example", fern), fern)).toBe("none");
    });

    test("is not proved by an address under which many domains stand", async () => {
      expect(
        await ask(arrived(plain.replace(ines, "ines@example"), "192.0.2.7", "ines@example"), "ines@example"),
      ).toBe("none");
    });

    test("cannot be proved just now while its name servers do not answer", async () => {
      const { "fernhill.example": _, ...others } = texts;
      const half = await startNameServer(others, ["fernhill.example"]);
      const known = await startNameServer({ ...others, "_dmarc.fernhill.example": "v=DMARC1; p=none" }, [
        "fernhill.example",
      ]);
      expect(await ask(arrived(letter, "192.0.2.7", fern), fern, [half.address])).toBe("temporary");
      // The owner of another domain cannot make us wait.
      expect(await ask(arrived(letter, "192.0.2.7", fern), fern, [known.address])).toBe("temporary");
      expect(await ask(arrived(letter, "192.0.2.7"), fern, [known.address])).toBe("fail");
      await half.stop();
      await known.stop();
    });
  });

  test("is not called a forger where nobody can read who spoke to our server", async () => {
    const line = "Received: by mx.quillgate.example with LMTP; Mon, 9 Nov 2026 09:00:00 -0600";
    expect(await ask(`Return-Path: <${ines}>\r\n${line}\r\n${plain}`)).toBe("temporary");
    expect(await ask(`Return-Path: <eve@evil.example>\r\n${line}\r\n${plain}`)).toBe("fail");
  });

  test("whose domain is a signer's neighbour is proved as DMARC has it", async () => {
    const letter = await signed("brightwire.example", "omar@mail.brightwire.example");
    expect(await ask(letter, "omar@mail.brightwire.example")).toBe("pass");
  });

  test("is no forger while the key of her signature cannot be had just now", async () => {
    const { "here._domainkey.brightwire.example": _, ...others } = texts;
    const half = await startNameServer(others, ["here._domainkey.brightwire.example"]);
    expect(await ask(await signed(), ines, [half.address])).toBe("temporary");
    await half.stop();
  });

  test("cannot be proved just now while no name server answers", async () => {
    expect(await ask(await signed(), ines, ["127.0.0.1:1"])).toBe("temporary");
  });

  test("the settings' own trial tells name servers that answer from those that do not", async () => {
    expect(await tryNameServers([server.address], "orders@quillgate.example")).toEqual({
      ok: true,
      says: `name servers: ${server.address} answer`,
    });
    expect(await tryNameServers(["127.0.0.1:1"], "orders@quillgate.example")).toMatchObject({
      ok: false,
      says: expect.stringMatching(/127\.0\.0\.1:1 give no answer .*trust\.name_servers/),
    });
  });

  test("is answered when proved, and not when refuted", async () => {
    const sender = keepingSender();
    const made = await temporaryDesk({ reader, sender });
    const desk = { ...made, rules: { ...made.rules, nameServers: [server.address] } };
    const take = async (letter: string) => {
      const taken = await takeLetter(desk, Buffer.from(letter), new Date("2026-11-09T15:00:00Z"));
      return desk.store.letters.read(taken.letter);
    };
    expect(await take(plain)).toMatchObject({ state: "held", why: expect.stringMatching(/forged/) });
    expect(sender.kept).toEqual([]);
    expect(await take(await signed())).toMatchObject({ state: "sent" });
    // and while nobody can be asked, she is not answered either, known as she is
    const deaf = { ...desk, rules: { ...desk.rules, nameServers: ["127.0.0.1:1"] } };
    const later = await takeLetter(
      deaf,
      Buffer.from(`X: 2\r\n${plain}`.replace("Hello", "Hello again")),
      new Date(0),
    );
    expect(await desk.store.letters.read(later.letter)).toMatchObject({ state: "received" });
    expect(sender.kept.map(({ recipient }) => recipient)).toEqual([ines]);
  });
});
