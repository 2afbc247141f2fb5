import { describe, expect, test } from "vitest";
import { readLetter } from "../../../src/reading/letter/letter.ts";
import { bytesOf } from "../../make/mime.ts";

const page = (html: string): string[] => ["Content-Type: text/html; charset=utf-8", "", html];
const textOf = async (...lines: string[]): Promise<string> =>
  (await readLetter(bytesOf(["From: greta@fallowmere.example", ...lines]))).text.trim();
/** A letter that says the same as plain text and as a page, or should. */
const both = (plain: string, html: string): Promise<string> =>
  textOf(
    "Content-Type: multipart/alternative; boundary=cut",
    "",
    "--cut",
    "Content-Type: text/plain; charset=utf-8",
    "",
    plain,
    "--cut",
    ...page(html),
    "--cut--",
  );

/** How mail programs write a page; none of it changes what is said. */
const harmless = [
  "<p>KEEP SALONA</p>",
  '<html><head><title>Re: CONFIRM</title><style style="display:none;">p {margin:0}</style></head><body>KEEP SALONA</body></html>',
  "<style><!-- .x {display:none} --></style><!--[if mso]><s>x</s><![endif]--><div>KEEP <b>SALONA</b></div>",
  '<div style="overflow:hidden;font-size:0.9em">KEEP&nbsp;SALONA</div><img src="cid:logo" alt="Fallowmere Electric">',
  "<span>KEEP SALONA</span><section></section>",
];

/** What strikes words out, or hides them. */
const misleading = [
  "<s>KEEP SALONA</s>",
  '<p><S class="x">KEEP SALONA</S></p>',
  "<del>KEEP SALONA</del><p>Thanks</p>",
  '<style>span.s1 {text-decoration: line-through}</style><span class="s1">KEEP SALONA</span>',
  "<strike>KEEP SALONA</strike>",
  '<span style="text-decoration: line-through">KEEP SALONA</span>',
  '<div style="display:none">KEEP SALONA</div>',
  '<div style="font-size:0px">KEEP SALONA</div>',
  "<div hidden>KEEP SALONA</div>",
  '<div style="visibility: hidden">KEEP SALONA</div>',
];

describe("a page of HTML", () => {
  test.each(harmless)("%s is as good as plain text", async (html) => {
    expect(await textOf(...page(html))).toMatch(/^KEEP\sSALONA/);
    expect(await both("KEEP SALONA", html)).toBe("KEEP SALONA");
  });

  test.each(misleading)("%s gives no text, with or without a plain one beside it", async (html) => {
    expect(await textOf(...page(html))).toBe("");
    expect(await both("KEEP SALONA", html)).toBe("");
  });

  test("that says more than the plain text gives none", async () => {
    expect(await both("KEEP SALONA", "<p>KEEP SALONA</p><p>But hold the order.</p>")).toBe("");
    expect(await both("KEEP SALONA", "<p>KEEP SALONA</p><p>❌</p>")).toBe("");
    expect(await both("KEEP SALONA", `<p>KEEP SALONA</p>${" ".repeat(1_000_000)}`)).toBe("");
  });

  test("that quotes in another way says no more", async () => {
    const plain =
      "KEEP SALONA\n\nOn Mon, Nov 9, 2026 at 9:00 AM Burin <orders@quillgate.example> wrote:\n\n> B-1salona.pdf";
    const html =
      "<div>KEEP SALONA</div><br><div>On Mon, Nov 9, 2026 at 9:00 AM Burin &lt;orders@quillgate.example&gt; wrote:<br></div>" +
      "<blockquote><table><tr><td>B-1</td><td>salona.pdf</td></tr></table></blockquote>";
    expect(await both(plain, html)).toBe(plain);
  });
});
