import { expect, test } from "vitest";
import { everyProblem, type Report } from "../../src/judging/report.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { reportOn } from "../make/report.ts";
import { aloneDevice, completeOrder, device, deviceAt, plate } from "../make/sample.ts";

const { billTo } = device();
const told = (report: Report): string[] =>
  everyProblem(report)
    .filter(({ verdict }) => verdict !== "pass")
    .map(({ check, wording }) => `${check}/${wording}`);
const lacking = (report: Report): unknown[] => report.orders.flatMap(({ missing }) => missing);

test.each<[string, Sheet[], string]>([
  [
    "a ZIP of another state on one of three sheets",
    [
      aloneDevice(),
      aloneDevice({ id: "1/7", mark: "S-1", file: "S-1.pdf" }),
      aloneDevice({ id: "1/8", mark: "S-2", file: "S-2.pdf", billTo: { ...billTo, postcode: "06070" } }),
    ],
    "postcode-state-mismatch/differs",
  ],
  [
    "half a ship-to on one sheet",
    [
      aloneDevice(),
      aloneDevice({
        id: "1/8",
        mark: "S-1",
        file: "a.pdf",
        shipSame: false,
        shipTo: { name: "Library", city: "Chicago" },
      }),
    ],
    "address-incomplete/ship",
  ],
  [
    "a position that was not changed on a copied sheet",
    [
      ...completeOrder().slice(0, -1),
      deviceAt(3, { id: "1/8", file: "right.pdf", layouts: ["D2"], legends: device().legends.slice(0, 2) }),
    ],
    "position-taken-twice/forgotten",
  ],
  [
    "a position that the plate does not have",
    [...completeOrder().slice(0, -1), deviceAt(5, { id: "1/8", file: "right.pdf" })],
    "position-out-of-range/position",
  ],
  [
    "a device of the plate marked as standing alone",
    [...completeOrder().slice(0, -1), deviceAt(4, { standing: "alone", legends: aloneDevice().legends })],
    "standalone-in-plate/marked",
  ],
  [
    "a mark with a zero in front",
    [...completeOrder().slice(0, -1), deviceAt(4, { mark: "S-0104" })],
    "station-mark-near-miss/near",
  ],
  [
    "an invisible character",
    [aloneDevice({}, { "1": ["\uFEFFENTRY", ""] })],
    "invisible-character/invisible",
  ],
])("%s is one problem, and nothing is asked for", (_, sheets, problem) => {
  const report = reportOn(sheets);
  expect(told(report)).toEqual([problem]);
  expect(lacking(report)).toEqual([]);
});

test("where fewer sheets came than are lacking, those that are lacking are asked for", () => {
  const report = reportOn([plate(), deviceAt(1), deviceAt(1, { id: "1/8", file: "b.pdf", finish: "CHK" })]);
  expect(lacking(report)).toHaveLength(3);
});

test("an order whose device came under another number does not pass before the question is answered", () => {
  const [first, ...rest] = completeOrder().toReversed();
  const report = reportOn([...rest, { ...(first as Sheet), order: "BW-22O7" }]);
  expect(report.orders.map(({ order, verdict }) => [order.number, verdict])).toEqual([
    ["BW-2207", "waiting"],
    ["BW-22O7", "confirm"],
  ]);
  expect(lacking(report)).toEqual([]);
});

test("a question about two orders keeps its facts while more sheets come to either", () => {
  const about = (...later: Sheet[]): unknown[] => {
    const sheets = [
      aloneDevice({ id: "1/1", order: "BW-2207" }),
      aloneDevice({ id: "2/1", order: "BW-22O7", mark: "S-111" }),
      ...later,
    ];
    return everyProblem(reportOn(sheets))
      .filter(({ check }) => check === "order-number-near-miss")
      .map(({ facts }) => facts);
  };
  const asked = [{ number: "BW-22O7", other: "BW-2207" }];
  expect(about()).toEqual(asked);
  expect(about(aloneDevice({ id: "3/1", order: "BW-2207", mark: "S-120" }))).toEqual(asked);
  expect(about(aloneDevice({ id: "3/1", order: "BW-22O7", mark: "S-120" }))).toEqual(asked);
});

test("stations that come again under another number are asked about in the letter that brings them", () => {
  const first = [
    aloneDevice({ id: "1/1" }),
    aloneDevice({ id: "2/1", order: "BW-9034", mark: "S-1", file: "S-1.pdf" }),
  ];
  const asked = (sheet: Sheet): string[] => told(reportOn([sheet], { earlier: first }));
  expect(asked(aloneDevice({ id: "3/1", mark: "S-1", file: "S-1.pdf", finish: "CHK" }))).toEqual([
    "order-number-near-miss/again",
  ]);
  expect(asked(aloneDevice({ id: "3/1", order: "BW-9034", finish: "CHK" }))).toEqual([
    "order-number-near-miss/again",
  ]);
  expect(asked(aloneDevice({ id: "3/1", mark: "S-2", file: "S-2.pdf" }))).toEqual([]);
});
