import { expect, test } from "vitest";
import { headerLeftOut } from "../../src/checks/order/header-left-out.ts";
import { without } from "../../src/checks/sample.ts";
import type { Report } from "../../src/judging/report.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { reportOn, sentEarlier } from "../make/report.ts";
import { aloneDevice, blankDevice, completeOrder, deviceAt, plate } from "../make/sample.ts";

/** A sheet on which nothing of the header but the order number is filled in. */
const bare = <S extends Sheet>(sheet: S): S => ({
  ...without(sheet, "project"),
  contact: {},
  billTo: {},
  shipTo: {},
  shipSame: false,
});
const bareDevices = (changes: Partial<Sheet> = {}): Sheet[] =>
  [1, 2, 3, 4].map((n) => Object.assign(bare(deviceAt(n)), changes));
const checks = ({ sheets, orders }: Report): string[] =>
  [...sheets, ...orders].flatMap(({ problems }) => problems.map(({ check }) => check));
const inherited = ({ sheets }: Report) => sheets.flatMap(({ sheet }) => sheet.inherited ?? []);

test("what one sheet of an order says holds for those of its letter that leave it out, and is told once", () => {
  const report = reportOn([plate(), ...bareDevices()]);
  expect([report.verdict, checks(report)]).toEqual(["pass", [headerLeftOut.id]]);
  const { contact, billTo, shipTo, shipSame, project } = plate();
  for (const { sheet } of report.sheets)
    expect(sheet).toMatchObject({ contact, billTo, shipTo, shipSame, project });
  // the order that is drawn and released has it too
  for (const sheet of report.orders[0]?.order.sheets ?? []) expect(sheet).toMatchObject({ billTo, contact });
  const [note] = report.orders[0]?.problems ?? [];
  expect(note?.facts).toEqual({
    count: 4,
    what: ["the project", "the contact", "the bill-to address", "the ship-to address"],
    from: ["S-104 plate.pdf"],
  });
});

test("two sheets of which each leaves out what the other says have it from each other", () => {
  const { project = "", billTo } = plate();
  const report = reportOn([without(plate(), "project"), ...bareDevices({ project })]);
  expect(report.verdict).toBe("pass");
  for (const { sheet } of report.sheets) expect(sheet).toMatchObject({ project, billTo });
});

test("an address of its own is inherited too, and a half one is completed by one that agrees", () => {
  const shipTo = {
    name: "Site office",
    street: "2 Quay Street",
    city: "Rockford",
    state: "IL",
    postcode: "61101",
  };
  const site = { shipSame: false, shipTo };
  const { postcode: _postcode, ...half } = plate().billTo;
  const [first, ...more] = bareDevices();
  const report = reportOn([plate(site), { ...first, billTo: half } as Sheet, ...more]);
  expect(report.verdict).toBe("pass");
  for (const { sheet } of report.sheets) expect(sheet).toMatchObject({ ...site, billTo: plate().billTo });
});

test("nothing is inherited among sheets that name no order, though they are kept with one", () => {
  const nameless = [plate(), bare(deviceAt(1))].map((sheet) => without(sheet, "order"));
  const report = reportOn(nameless, { earlier: sentEarlier([aloneDevice()]) });
  expect(report.orders.map(({ order }) => [order.number, order.sheets.length])).toEqual([["BW-2207", 3]]);
  expect(inherited(report)).toEqual([]);
});

test("whoever fills in everything, or no more than may stay empty, inherits nothing", () => {
  const report = reportOn(
    completeOrder().map((sheet, i) =>
      i === 0 ? sheet : { ...sheet, contact: { name: "Ines Calloway", phone: "312-555-0117" } },
    ),
  );
  expect([report.verdict, inherited(report)]).toEqual(["pass", []]);
});

test("two sheets that differ raise what they raise alone, and nobody inherits from either", () => {
  const billTo = { ...plate().billTo, street: "9 Quay Street" };
  const [first, second, ...more] = bareDevices();
  const report = reportOn([plate(), { ...first, billTo } as Sheet, ...more, second as Sheet]);
  expect(report.verdict).toBe("fail");
  expect(checks(report)).toEqual(expect.arrayContaining(["bill-to-differs", "address-incomplete"]));
  const places = inherited(report).flatMap((one) => one.places);
  expect(places.filter((place) => place.startsWith("bill."))).toEqual([]);
  // "same as bill-to" says nothing where the bill-to address is not the same
  const own = report.sheets.find(({ sheet }) => sheet.billTo.street === "9 Quay Street");
  expect(own?.sheet.shipSame).toBe(false);
});

test("an address beside “same as bill-to” is another answer", () => {
  const shipTo = { ...plate().billTo };
  const [first, ...more] = bareDevices();
  const report = reportOn([plate(), { ...first, shipTo } as Sheet, ...more]);
  expect(inherited(report).flatMap((one) => one.places)).not.toContain("ship.same");
  expect(checks(report)).toContain("ship-to-unclear");
});

test("nothing is inherited across letters, nor across orders", () => {
  const later = reportOn(bareDevices(), { earlier: sentEarlier([plate()]) });
  expect([later.verdict, inherited(later)]).toEqual(["fail", []]);
  const other = reportOn([plate(), ...bareDevices({ order: "LL-93" })]);
  expect([other.verdict, inherited(other)]).toEqual(["fail", []]);
});

test("a number written otherwise is the same order, and a placeholder is none", () => {
  const same = reportOn([plate(), ...bareDevices({ order: "bw 2207" })]);
  expect(same.verdict).toBe("pass");
  expect(inherited(reportOn([plate({ order: "TBD" }), ...bareDevices({ order: "TBD" })]))).toEqual([]);
});

test("sheets without a number have the one number of their letter, and the answer says so", () => {
  const bareOnes = bareDevices().map((sheet) => without(sheet, "order"));
  const report = reportOn([plate(), ...bareOnes]);
  expect(report.verdict).toBe("pass");
  expect(report.orders).toHaveLength(1);
  const [taken] = report.orders[0]?.problems.filter(({ check }) => check === "header-left-out") ?? [];
  expect(taken?.facts["what"]).toContain("the order number");
});

test.each([
  ["two numbers", () => [plate(), deviceAt(1, { order: "BW-2208" })]],
  ["a number that is none", () => [plate({ order: "TBD" })]],
  ["a number that is doubted", () => [plate({ doubts: [{ what: "typed-over", place: "order" }] })]],
  ["a number of another letter", () => [plate({ id: "9/1" })]],
])("from %s no sheet has its number", (_, others) => {
  const report = reportOn([...others(), without(deviceAt(2), "order")]);
  expect(
    report.sheets.flatMap(({ sheet }) => sheet.inherited ?? []).flatMap(({ places }) => places),
  ).not.toContain("order");
});

test("nothing is inherited under a number that is asked about", () => {
  const earlier = sentEarlier([plate(), deviceAt(1), deviceAt(2)]);
  const sheets = [deviceAt(3, { order: "BW-22O7" }), { ...bare(deviceAt(4)), order: "BW-22O7" } as Sheet];
  const report = reportOn(sheets, { earlier });
  expect(checks(report)).toContain("order-number-near-miss");
  expect(inherited(report)).toEqual([]);
});

test("nothing is inherited from a sheet that is at fault there, or as a whole", () => {
  const wrong: readonly Partial<Sheet>[] = [
    { contact: { name: "Ines Calloway", email: "ines@brightwire" } },
    { billTo: { ...plate().billTo, postcode: "97201" } },
    { project: "TBD" },
  ];
  for (const changes of wrong) {
    const report = reportOn([{ ...plate(), ...changes } as Sheet, ...bareDevices()]);
    const places = inherited(report).flatMap((one) => one.places);
    const [key = ""] = Object.keys(changes);
    const block = { contact: "contact.", billTo: "bill.", project: "project" }[key] ?? "";
    expect(
      places.filter((place) => place.startsWith(block)),
      key,
    ).toEqual([]);
    expect(report.verdict, key).toBe("fail");
  }
  const unsure = [{ place: "order" as const, one: "BW-2207", other: "BW-2201" }];
  expect(inherited(reportOn([plate({ unsure }), ...bareDevices()]))).toEqual([]);
  const scribbled = plate({ doubts: [{ what: "something-more", kind: "drawn", where: "the upper edge" }] });
  expect(inherited(reportOn([scribbled, ...bareDevices()]))).toEqual([]);
});

test("a field that could not be read for certain is not filled by a guess", () => {
  const [first, ...more] = bareDevices();
  const unsure = [{ place: "bill.street" as const, one: "9 Quay Street", other: "" }];
  const report = reportOn([plate(), { ...first, unsure } as Sheet, ...more]);
  expect(report.sheets.find(({ sheet }) => sheet.id === first?.id)?.sheet.billTo).toEqual({});
});

test("a place that its form does not print stays out", () => {
  const [first, ...more] = bareDevices();
  const prints = Object.fromEntries(
    Object.entries(first?.prints ?? {}).filter(([place]) => !place.startsWith("bill.")),
  );
  const report = reportOn([plate(), { ...first, prints } as Sheet, ...more]);
  expect(report.sheets.find(({ sheet }) => sheet.id === first?.id)?.sheet.billTo).toEqual({});
});

test("an empty sheet stays empty", () => {
  const report = reportOn([plate(), blankDevice()]);
  expect([checks(report).includes("blank-sheet"), inherited(report)]).toEqual([true, []]);
});

test("what a sheet has inherited stays with it when later letters come", () => {
  const first = reportOn([plate(), ...bareDevices().slice(0, 3)]);
  const earlier = sentEarlier(first.sheets.map(({ sheet }) => sheet));
  const report = reportOn([deviceAt(4)], { earlier });
  expect(report.verdict).toBe("pass");
});

test("what is left out comes from the sheet that says most of it, whichever came first", () => {
  const { name, phone } = plate().contact as { name: string; phone: string };
  const half = plate({ contact: { name, phone } });
  const whole = deviceAt(3);
  const [first] = bareDevices();
  for (const sheets of [
    [half, first, whole],
    [{ ...whole, id: "1/0" }, { ...half, id: "1/6" }, first],
  ])
    expect(
      inherited(reportOn(sheets as Sheet[])).find(({ places }) => places.includes("contact.name")),
    ).toEqual({
      places: ["contact.name", "contact.email", "contact.phone"],
      from: whole.file,
    });
});
