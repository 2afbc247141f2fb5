import { expect, test } from "vitest";
import { composeAnswer } from "../../src/answer/answer.ts";
import { without } from "../../src/checks/sample.ts";
import type { Report } from "../../src/judging/report.ts";
import { catalogue } from "../make/config.ts";
import { reportOn, sentEarlier } from "../make/report.ts";
import { aloneDevice, completeOrder, device, deviceAt, plate } from "../make/sample.ts";

const [base, ...devices] = completeOrder();
const tooLong = device({ id: "1/3" }, { "1": ["RECEPTION", ""], "3": ["CONFERENCE", ""] });

function textOf(report: Report): string {
  return composeAnswer(report, catalogue).text;
}

/** The first line, joined again where it was broken. */
function firstLine(report: Report): string {
  return textOf(report).split("\n\n")[0]?.replaceAll("\n", " ") ?? "";
}

function after(text: string, heading: string): string {
  return text.split(`\n${heading}\n`)[1] ?? "";
}

test("a complete order passes in the first line", () => {
  expect(firstLine(reportOn(completeOrder()))).toBe("PASS: order BW-2207 is complete, nothing to fix.");
});

test("a failed order counts what is to be fixed in the first line", () => {
  expect(firstLine(reportOn([plate(), deviceAt(1), tooLong, deviceAt(3), deviceAt(4)]))).toBe(
    "FAIL: 2 to fix before order BW-2207 can be engraved.",
  );
});

test("an order with a question asks for the answer in the first line", () => {
  const report = reportOn([
    plate(),
    deviceAt(1),
    deviceAt(2, { finish: "SLT", lettering: "MLK" }),
    ...devices.slice(2),
  ]);
  expect(firstLine(report)).toBe("CONFIRM: 1 question before order BW-2207 can be engraved.");
});

test("the first line counts all that an order lacks, whatever it is", () => {
  const unsure = { place: "row.1.1", one: "ENTRY", other: "ENTER" } as const;
  const all = [
    plate(),
    deviceAt(1, { unsure: [unsure] }),
    tooLong,
    deviceAt(3, { finish: "SLT", lettering: "MLK" }),
  ];
  const told = "2 to fix, 1 question, 1 point for a person, 1 sheet to come";
  expect(firstLine(reportOn(all))).toBe(`FAIL: ${told} before order BW-2207 can be engraved.`);
  expect(composeAnswer(reportOn(all), catalogue).subject).toBe(`FAIL: order BW-2207, ${told}`);
  expect(firstLine(reportOn(all.filter((sheet) => sheet !== tooLong)))).toBe(
    "A PERSON WILL LOOK AT THIS: 1 question, 1 point for a person, 2 sheets to come before order BW-2207 can be engraved.",
  );
});

test("the first line of several orders names each that does not pass, the gravest and the others", () => {
  const asked = aloneDevice({ order: "KM-31" }, { "1": [" ENTRY", ""] });
  const report = reportOn([
    tooLong,
    plate(),
    asked,
    aloneDevice({ id: "1/12", file: "ok.pdf", order: "QQ-7000", mark: "Q-7", project: "Quay House" }),
  ]);
  expect(report.orders.map(({ verdict }) => verdict)).toEqual(["fail", "confirm", "pass"]);
  expect(firstLine(report)).toBe(
    "FAIL: 2 to fix, 1 question, 3 sheets to come before orders BW-2207 and KM-31 can be engraved.",
  );
});

test("an incomplete order waits for a number of sheets in the first line", () => {
  expect(firstLine(reportOn([plate(), deviceAt(1)]))).toBe(
    "WAITING: order BW-2207 is right so far, 3 sheets to come.",
  );
});

test("a letter for a person says so in the first line", () => {
  const unsure = { place: "row.1.1", one: "ENTRY", other: "ENTER" } as const;
  const report = reportOn([plate(), deviceAt(1, { unsure: [unsure] }), ...devices.slice(1)]);
  expect(firstLine(report)).toBe(
    "A PERSON WILL LOOK AT THIS: 1 point for a person before order BW-2207 can be engraved.",
  );
});

test("below the first line stands what the reader has to do first", () => {
  const unsure = { place: "row.1.1", one: "ENTRY", other: "ENTER" } as const;
  const todo = (report: Report) => textOf(report).split("\n\n")[1]?.replaceAll("\n", " ");
  const four = (second: ReturnType<typeof deviceAt>) => [plate(), deviceAt(1), second, ...devices.slice(2)];
  expect(todo(reportOn(completeOrder()))).toBe(
    "Please read below what will be cut. You need do nothing more.",
  );
  expect(todo(reportOn(four(tooLong)))).toBe(
    "Correct what stands under “To fix” and send only the corrected sheets, in a reply to this letter.",
  );
  expect(todo(reportOn(four(deviceAt(2, { finish: "SLT", lettering: "MLK" }))))).toBe(
    "Answer each question in a reply to this letter, by its number.",
  );
  expect(todo(reportOn([plate(), deviceAt(1)]))).toBe(
    "Send the missing sheets when they are ready, in a reply to this letter.",
  );
  expect(todo(reportOn(four(deviceAt(2, { unsure: [unsure] }))))).toBe(
    "A person at Quillgate Stations looks at this letter and writes to you.",
  );
  const { html } = composeAnswer(reportOn(four(tooLong)), catalogue);
  expect(html.slice(html.indexOf("aria-level"), html.indexOf("<h2"))).toContain(
    "Correct what stands under “To fix” and send only the corrected sheets, in a reply to this letter.",
  );
});

test("a letter without a sheet learns how to order", () => {
  const text = textOf(reportOn([]));
  expect(text).toMatch(
    /^A PERSON WILL LOOK AT THIS: no order sheet came with this letter\.\n\nA person at Quillgate Stations looks at this letter and writes to you\.\n\n/,
  );
  expect(after(text, "HOW TO ORDER")).toContain("one plate sheet\n  for each plate of 2 to 6 gangs.");
  expect(after(text, "WHAT HAPPENS NEXT")).toMatch(
    /^\n- For blank sheets write to orders@quillgate\.example\.\n\n/,
  );
});

test("a sheet without a number, or with a placeholder, is answered as this order", () => {
  for (const sheets of [
    completeOrder().map((sheet) => without(sheet, "order")),
    completeOrder().map((sheet) => ({ ...sheet, order: "TBD" })),
  ]) {
    const report = reportOn(sheets);
    expect(firstLine(report)).toMatch(/^FAIL: 1 to fix before this order can be engraved\.$/);
    expect(textOf(report)).toContain("\nOrder without a number, Larkspur Library\n");
  }
});

test("a letter with nothing but a photograph is told one thing of it, and how to order", () => {
  const photo = { id: "1/1", file: "IMG_2044.png", kind: "other" } as const;
  const text = textOf(reportOn([], { files: [photo] }));
  expect(text).toContain("This letter\n  1. No order sheet is among the attached files.");
  expect(text.match(/IMG_2044\.png/g)).toHaveLength(1);
  expect(text).not.toContain("Nothing to do");
  expect(text).toContain("HOW TO ORDER");
});

test("sheets that cannot be read are called so, and their sender is not told how to order", () => {
  const files = (["printed", "locked", "damaged"] as const).map((kind, i) => ({
    id: `1/${i}`,
    file: `${kind}.pdf`,
    kind,
  }));
  const report = reportOn([], { files });
  expect(firstLine(report)).toMatch(/^FAIL: 3 to fix; no sheet that could be read came with this letter\./);
  expect(textOf(report)).not.toContain("HOW TO ORDER");
  const form = { id: "1/9", file: "form.pdf", kind: "unknown-form" } as const;
  expect(textOf(reportOn([], { files: [form] }))).toContain("HOW TO ORDER");
});

test("a reply in plain words is thanked for and not told how to order", () => {
  const report = reportOn([], { reply: true });
  expect(firstLine(report)).toBe("A PERSON WILL LOOK AT THIS: thank you for your reply.");
  expect(textOf(report)).not.toContain("HOW TO ORDER");
  expect(textOf(report)).not.toContain("attach");
});

test("problems stand under the name of their file, stops before questions before notes, numbered through", () => {
  const text = textOf(
    reportOn([plate(), tooLong, deviceAt(3, { project: "Larkspur Libary" })], {
      files: [{ id: "1/7", file: "photo.jpg", kind: "other" }],
    }),
  );
  const places = [
    "TO FIX\n\nS-104 pos 2.pdf\nDevice, S-104 position 2 of 4\n  1. Row 1",
    "  2. Row 1",
    "PLEASE CONFIRM\n\nS-104 pos 3.pdf",
    "  3. The project",
    "STILL TO COME\n\nS-104 plate.pdf",
    "  4. Plate S-104",
    "WORTH KNOWING\n\nphoto.jpg\nnot a PDF\n  5. ",
  ].map((words) => text.indexOf(words));
  expect(places).not.toContain(-1);
  expect(places).toEqual(places.toSorted((a, b) => a - b));
});

test("sheets are spoken of in the order in which they came, whatever looked at them", () => {
  const other = deviceAt(1, { finish: "SLT", lettering: "MLK" });
  const gaps = device({ id: "1/3" }, { "1": [" ENTRY", ""] });
  const text = after(textOf(reportOn([plate(), other, gaps])), "PLEASE CONFIRM");
  expect(text.indexOf("S-104 pos 1.pdf")).toBeLessThan(text.indexOf("S-104 pos 2.pdf\nDevice"));
});

test("each question says at its number what to reply", () => {
  const slip = deviceAt(3, { project: "Larkspur Libary" });
  const other = deviceAt(1, { finish: "SLT", lettering: "MLK" });
  const { text, html } = composeAnswer(reportOn([plate(), other, deviceAt(2), slip, deviceAt(4)]), catalogue);
  expect(text).toContain(
    "     If only one is wanted, send the sheet again with the right finish.\n     Or reply “1 YES” if it is meant as it stands.\n",
  );
  expect(text).toContain(
    "     Did you mean “Larkspur Library”? Confirm the right name.\n     Reply “2:” and your answer. A person reads it.\n",
  );
  for (const line of [
    "<br>Or reply “1 YES” if it is meant as it stands.",
    "<br>Reply “2:” and your answer. A person reads it.",
  ])
    expect(html).toContain(line);
  expect(text).toContain(
    "WHAT HAPPENS NEXT\n\n- YES says that it is meant as it stands, NO that a corrected sheet comes.\n  A person reads what you answer in other words.\n",
  );
});

test("a row at its limit asks what the word should be", () => {
  const cut = deviceAt(2);
  const legends = cut.legends.map((one) => (one.face === "1" ? { ...one, rows: ["RECEPTIO", ""] } : one));
  const { text, html } = composeAnswer(reportOn([base ?? plate(), { ...cut, legends }]), catalogue);
  const asks = "The form may have cut your word. What should it say?";
  expect(text.replaceAll(/\s+/g, " ")).toContain(
    `Row 1 of button 1 is full and ends in “RECEPTIO”, the beginning of RECEPTION or RECEPTIONIST. ${asks} Shorten the legend so that it fits, and send the sheet again. Or reply “1 YES” if it is meant as it stands.`,
  );
  expect(html).toContain(asks);
});

test("what happens next stands before what will be cut", () => {
  const { text, html } = composeAnswer(reportOn(completeOrder()), catalogue);
  const found = (words: string, where: string) => {
    const at = where.indexOf(words);
    expect(at).toBeGreaterThan(0);
    return at;
  };
  expect(found("WHAT HAPPENS NEXT", text)).toBeLessThan(
    found("PLEASE READ ONCE MORE: THIS IS WHAT WILL BE CUT", text),
  );
  expect(found("What happens next", html)).toBeLessThan(
    found("Please read once more: this is what will be cut", html),
  );
});

test("the field stands with a problem whose words do not name it as the form does", () => {
  expect(textOf(reportOn([plate(), tooLong]))).toContain("     Field: Face 1, row 1\n");
  const ours = { field: "button1_row1", label: "Button 1, row 1" };
  const named = { ...tooLong, prints: { ...tooLong.prints, "row.1.1": ours } };
  expect(textOf(reportOn([plate(), named]))).not.toContain("Field: Button 1, row 1");
});

test("of several fields all are told or none, and no more than three", () => {
  expect(textOf(reportOn([device({ position: 5 })]))).toContain(
    "     Fields: Position and Gangs of the plate\n",
  );
  expect(textOf(reportOn([device({ finish: "HRN", lettering: "RST" })]))).toContain(
    "     Fields: Lettering and Finish\n",
  );
  expect(textOf(reportOn([device({ shipSame: false })]))).not.toContain("Field");
});

test("files that the words name are not listed again", () => {
  const text = textOf(reportOn([deviceAt(1), deviceAt(2)]));
  expect(text).toContain("2 device sheets");
  expect(text).not.toContain("On: ");
});

test("what is wrong on several sheets alike is told once, with their names", () => {
  const text = textOf(reportOn(completeOrder().map((sheet) => without(sheet, "finish"))));
  expect(text).toMatch(/^FAIL: 1 to fix/);
  expect(text).toContain("On 5 sheets\nS-104 plate.pdf, S-104 pos 1.pdf, S-104 pos 2.pdf");
  expect(text.match(/Not filled in: “Finish”\./g)).toHaveLength(1);
});

test("a problem between sheets stands under the order and names those of an earlier letter", () => {
  const text = textOf(
    reportOn([deviceAt(3, { id: "1/8", gangs: 3, file: "new.pdf" })], { earlier: sentEarlier([plate()]) }),
  );
  expect(after(text, "TO FIX")).toMatch(/^\nOrder BW-2207\n {2}1\. /);
  expect(text).toContain("earlier letter");
});

test("the table lists what came and what is missing along the wall", () => {
  const text = textOf(reportOn([deviceAt(3), tooLong, plate()]));
  const table = after(text, "SHEETS").trimStart().split("\n\n")[0]?.split("\n");
  expect(table?.map((line) => line.trim().split(/\s{2,}/))).toEqual([
    ["Missing", "Device, S-104 position 1 of 4", "not received"],
    ["Fix: 1, 2", "Device, S-104 position 2 of 4", "S-104 pos 2.pdf"],
    ["Missing", "Device, S-104 position 4 of 4", "not received"],
    ["2 more sheets of this order: OK."],
  ]);
});

test("a plate without any device yet has one row for all that are missing", () => {
  const table = after(textOf(reportOn([plate()])), "SHEETS")
    .trimStart()
    .split("\n\n")[0]
    ?.split("\n");
  expect(table?.map((line) => line.trim().split(/\s{2,}/))).toEqual([
    ["Missing", "Devices 1 to 4, S-104", "not received"],
    ["1 more sheet of this order: OK."],
  ]);
});

test("the table says what each number asks for", () => {
  const gaps = device({}, { "1": ["RECEPTION", ""], "2": [" STACKS", "EAST"], "3": ["Dim", ""] });
  expect(after(textOf(reportOn([plate(), gaps])), "SHEETS")).toContain("  Fix: 1; confirm: 2; see 4 ");
});

test("sheets without a remark are counted in one line, whatever the verdict", () => {
  const asked = deviceAt(2, { finish: "SLT", lettering: "MLK" });
  const unsure = { place: "row.1.1", one: "ENTRY", other: "ENTER" } as const;
  const four = (one: (typeof devices)[number]) => [plate(), deviceAt(1), one, deviceAt(3), deviceAt(4)];
  const line = (report: Report) => after(textOf(report), "SHEETS").split("\n\n")[0];
  expect(line(reportOn(four(tooLong)))).toBe(
    "\n  Fix: 1, 2  Device, S-104 position 2 of 4  S-104 pos 2.pdf\n4 more sheets of this order: OK.",
  );
  expect(line(reportOn(four(asked)))).toBe(
    "\n  Confirm: 1  Device, S-104 position 2 of 4  S-104 pos 2.pdf\n4 more sheets of this order: OK.",
  );
  expect(line(reportOn(four(deviceAt(2, { unsure: [unsure] }))))).toBe(
    "\n  A person: 1  Device, S-104 position 2 of 4  S-104 pos 2.pdf\n4 more sheets of this order: OK.",
  );
  expect(line(reportOn(four(deviceAt(2)).slice(0, 4)))).toBe(
    "\n  Missing  Device, S-104 position 4 of 4  not received\n4 more sheets of this order: OK.",
  );
  expect(line(reportOn(four(deviceAt(2))))).toBe("\n5 sheets of this order: OK.");
});

test("a failed order sends back the faulty sheets alone", () => {
  const text = textOf(reportOn([plate(), deviceAt(1), tooLong, ...devices.slice(2)]));
  expect(text.split("\n\n")[1]?.replaceAll("\n", " ")).toBe(
    "Correct what stands under “To fix” and send only the corrected sheets, in a reply to this letter.",
  );
  expect(after(text, "WHAT HAPPENS NEXT")).toContain(
    "Sheets not marked “Fix” are kept; do not send them again.",
  );
});

test("a plate that waits for its devices is kept", () => {
  const next = after(textOf(reportOn([plate()])), "WHAT HAPPENS NEXT");
  expect(next).toContain("What came is kept. Send a sheet again only if you change it.");
});

test("nothing is called kept when every sheet is to be corrected", () => {
  expect(textOf(reportOn([aloneDevice({}, { "1": ["RECEPTION", ""] })]))).not.toContain("kept");
});

test("a passed order shows the legends as they will be cut, plain faces and earlier sheets too", () => {
  const [one, ...others] = devices;
  if (one === undefined || base === undefined) throw new Error("the sample has sheets");
  const plain = { face: "3", rows: ["", ""], plain: true } as const;
  const legends = one.legends.map((legend) => (legend.face === "3" ? plain : legend));
  const proofs = after(
    textOf(reportOn([{ ...one, legends }], { earlier: sentEarlier([base, ...others]) })),
    "PLEASE READ ONCE MORE: THIS IS WHAT WILL BE CUT",
  );
  expect(proofs).toContain("S-104 plate.pdf (earlier letter)\nPlate of 4, S-104; Oat with Ink lettering\n");
  expect(proofs).toContain(
    "            row 1   row 2\n  Button 1  ENTRY\n  Button 2  STACKS  EAST\n  Button 3  left plain\n",
  );
});

test("two words of one row are told from two rows", () => {
  const sheets = completeOrder().map((sheet) =>
    sheet.kind === "plate"
      ? plate({}, { "1": ["FRONT DESK", ""], "2": ["READING", "ROOM"], "3": ["FOYER", ""], "4": ["BAR", ""] })
      : sheet,
  );
  expect(textOf(reportOn(sheets))).toContain(
    "          row 1       row 2\n  Gang 1  FRONT DESK\n  Gang 2  READING     ROOM\n",
  );
});

test("a passed order goes to a person for release, and legends can be mended until then", () => {
  const next = after(textOf(reportOn(completeOrder())), "WHAT HAPPENS NEXT").replaceAll(/\s+/g, " ");
  expect(next).toContain("A person at Quillgate Stations releases the order; only then is it cut.");
  expect(next).toContain(
    "If a legend is wrong, tell us before that: reply to this letter or call 312-555-0140.",
  );
});

test("legends are shown again only when the order passes", () => {
  expect(textOf(reportOn([plate()]))).not.toContain("WHAT WILL BE CUT");
});

test("several orders have a part each, and the beginning tells what became of them", () => {
  const other = aloneDevice({ order: "KM-31" }, { "1": ["RECEPTION", ""] });
  const text = textOf(reportOn([...completeOrder(), other]));
  expect(text).toMatch(
    /^FAIL: 1 to fix before order KM-31 can be engraved\.\n\nCorrect what[^]*letter\.\n\nOrder BW-2207: PASS, nothing to fix\nOrder KM-31: FAIL, 1 to fix\n\n/,
  );
  expect(text).toContain(
    "\nOrder BW-2207, Larkspur Library\n===============================\nPASS: nothing to fix.\n",
  );
  expect(text).toContain("\nOrder KM-31, Larkspur Library\n=============================\nFAIL: 1 to fix.\n");
});

test("a locked file beside several good orders fails the letter and neither of them", () => {
  const report = reportOn([...completeOrder(), aloneDevice({ order: "KM-31" })], {
    files: [{ id: "1/20", file: "more.pdf", kind: "locked" }],
  });
  expect(textOf(report)).toMatch(
    /^FAIL: 1 to fix in this letter\.\n\nCorrect what[^]*letter\.\n\nThis letter: FAIL, 1 to fix\nOrder BW-2207: PASS/,
  );
});

test("a corrected sheet says that it took another's place", () => {
  const again = { ...tooLong, file: "again.pdf", mark: "S 104" };
  const text = textOf(reportOn([again], { earlier: sentEarlier(completeOrder()) }));
  expect(text).toContain("1 sheet came with this letter, 4 came earlier.");
  expect(text.replaceAll(/\s+/g, " ")).toContain(
    "again.pdf takes the place of the sheet S-104 pos 2.pdf, sent before. Changed: Station mark: “S-104” → “S 104”. " +
      "Face 1, row 1: “ENTRY” → “RECEPTION”. ",
  );
});

test("a letter that a person must see first names what came and nothing else", () => {
  const text = textOf(reportOn([tooLong], { held: true, earlier: sentEarlier(completeOrder()) }));
  expect(text).toMatch(
    /^A PERSON WILL LOOK AT THIS: thank you for your letter\.\n\nA person at Quillgate Stations reads your letter and writes to you\.\n\nWith it came S-104 pos 2\.pdf\.\n/,
  );
  expect(text).not.toMatch(/BW-2207|RECEPTION|Larkspur/);
});

test("every answer warns, and is signed by the maker", () => {
  for (const report of [reportOn([]), reportOn(completeOrder())]) {
    const text = textOf(report);
    expect(text).toContain("Legends are cut exactly as typed.");
    expect(text).toContain("This desk does not know the wiring.");
    expect(text.endsWith("orders@quillgate.example, 312-555-0140\n")).toBe(true);
  }
});

test("no line of text is wider than a reply can quote", () => {
  // RFC 5322 §2.1.1: lines of 78 characters at most, of which a quoting reply takes two.
  const text = textOf(reportOn([plate(), tooLong, deviceAt(3, { finish: "plaid" })]));
  expect(Math.max(...text.split("\n").map((line) => line.length))).toBeLessThanOrEqual(76);
});

test("many numbers of one sheet are written as ranges", () => {
  const faces = Object.fromEntries(["1", "2", "3", "4"].map((face) => [face, ["RECEPTION", "CONFERENCE"]]));
  const rows = after(textOf(reportOn([device({ id: "1/1" }, faces)])), "SHEETS");
  expect(rows).toMatch(/^ {2}Fix: \d–\d/m);
});
