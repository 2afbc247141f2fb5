import * as fc from "fast-check";
import { expect, test } from "vitest";
import { composeAnswer } from "../../src/answer/answer.ts";
import { darkOf } from "../../src/answer/dark.ts";
import { oneLine } from "../../src/answer/one-line.ts";
import { wordsOf } from "../../src/checks/run.ts";
import { everyProblem } from "../../src/judging/report.ts";
import { contrastRatio } from "../../src/lettering/contrast.ts";
import { catalogue } from "../make/config.ts";
import { expectDarkColours } from "../make/dark-colours.ts";
import { reportOn, reports } from "../make/report.ts";
import { completeOrder, device, deviceAt, plate } from "../make/sample.ts";

const marks: Record<string, string> = { "&lt;": "<", "&gt;": ">", "&quot;": '"', "&#39;": "'", "&amp;": "&" };

/** What a reader sees of a page, tags taken as gaps. */
function seen(html: string): string {
  const body = html.slice(html.indexOf("<body"));
  return body.replace(/<[^>]*>/g, " ").replace(/&(?:lt|gt|quot|#39|amp);/g, (mark) => marks[mark] ?? "");
}

function wordsIn(text: string): string[] {
  return (text.match(/[\p{L}\p{N}]+/gu) ?? []).map((word) => word.toLowerCase()).toSorted();
}

function closed(text: string): string {
  return text.replace(/\s+/gu, " ");
}

test("text and HTML have the same words, as often", () => {
  fc.assert(
    fc.property(reports, (report) => {
      const { text, html } = composeAnswer(report, catalogue);
      expect(wordsIn(seen(html))).toEqual(wordsIn(text));
    }),
  );
});

test("text and HTML name every problem, and how to mend it", () => {
  fc.assert(
    fc.property(reports, (report) => {
      // The sender of a held letter is asked nothing.
      fc.pre(!report.held);
      const { text, html } = composeAnswer(report, catalogue);
      for (const problem of everyProblem(report)) {
        const { says, fix } = wordsOf(problem);
        for (const words of [says, fix].map((part) => closed(oneLine(part, 600)))) {
          expect(closed(text)).toContain(words);
          expect(closed(seen(html))).toContain(words);
        }
      }
    }),
  );
});

test("nothing that was typed becomes part of the page", () => {
  fc.assert(
    fc.property(reports, (report) => {
      const { html } = composeAnswer(report, catalogue);
      const tags = new Set([...html.matchAll(/<\/?([^\s>]*)/g)].map((match) => match[1]));
      const known =
        "!doctype html head meta style title body table tr td div h2 h3 p strong br span pre ul li".split(
          " ",
        );
      expect([...tags].filter((tag) => !known.includes(tag ?? ""))).toEqual([]);
      expect(html.match(/<style/g)).toHaveLength(1);
    }),
  );
});

test("a legend and a file name full of markup are shown as typed", () => {
  const sheet = device({ file: `"S-104" <b>'2'.pdf` }, { "1": ["<img src=x onerror=alert(1)>", ""] });
  const { html } = composeAnswer(reportOn([plate(), sheet]), catalogue);
  expect(html).toContain("&quot;S-104&quot; &lt;b&gt;&#39;2&#39;.pdf");
  expect(html).toContain("“&lt;img src=x onerror=alert(1)&gt;”");
  expect(html).not.toContain("<img");
});

test("an answer on twenty sheets stays under 60 KB and loads nothing", () => {
  const twenty = ["A-1", "B-2", "C-3", "D-4"].flatMap((mark, i) => {
    const [first, ...devices] = [
      plate({ mark }),
      ...[1, 2, 3, 4].map((position) => deviceAt(position, { mark })),
    ];
    return [first, ...devices].map((sheet, j) => ({ ...sheet, id: `${i}/${j}`, file: `${mark} ${j}.pdf` }));
  });
  const spoilt = twenty.map((sheet, i) => ({
    ...sheet,
    legends: sheet.legends.map((legend) => ({ ...legend, rows: [`TOO LONG A ROW ${i}`, legend.face] })),
  }));
  for (const sheets of [twenty, spoilt]) {
    const { html } = composeAnswer(reportOn(sheets), catalogue);
    expect(new TextEncoder().encode(html).length).toBeLessThan(60_000);
    expect(html).not.toMatch(/\bsrc=|\bhref=|url\(|@import|<link|<script/);
  }
});

test("every size of type can be read on a phone, every colour on white", () => {
  const spoilt = [
    device(
      { finish: "SLT", unsure: [{ place: "row.1.1", one: "ENTRY", other: "ENTER" }] },
      { "3": ["RECEPTION", ""] },
    ),
  ];
  for (const sheets of [completeOrder(), completeOrder().slice(0, 3), spoilt]) {
    const { html } = composeAnswer(reportOn(sheets), catalogue);
    const sizes = [...html.matchAll(/(?:font:|font-size:)(\d+)px/g)].map((match) => Number(match[1]));
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(15);
    const colours = [...html.matchAll(/[;"](?:background:|color:)(#[0-9a-f]{6})/g)].map(
      (match) => match[1] ?? "",
    );
    // WCAG 2.2, 1.4.3: 4.5 to 1; plain white and the pale strip are grounds, not writing.
    const written = new Set(colours.filter((colour) => colour !== "#ffffff" && colour !== "#f3f1ea"));
    for (const colour of written) expect(contrastRatio(colour, "#f3f1ea")).toBeGreaterThanOrEqual(4.5);
  }
});

test("every colour has one for readers who have everything dark, which stands out there too", () => {
  const { writing, grounds, link } = darkOf;
  for (const sheets of [completeOrder(), completeOrder().slice(0, 3), [device({ finish: "SLT" })]]) {
    const { html } = composeAnswer(reportOn(sheets), catalogue);
    expectDarkColours(html);
  }
  for (const ground of Object.values(grounds))
    for (const colour of [...Object.values(writing), link])
      expect(contrastRatio(colour, ground), `${colour} on ${ground}`).toBeGreaterThanOrEqual(4.5);
});
