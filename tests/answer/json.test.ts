import * as fc from "fast-check";
import { expect, test } from "vitest";
import { z } from "zod";
import { reportJson } from "../../src/answer/json.ts";
import { without } from "../../src/checks/sample.ts";
import { everyProblem } from "../../src/judging/report.ts";
import { reportOn, reports } from "../make/report.ts";
import { completeOrder, device, plate } from "../make/sample.ts";

const verdict = z.enum(["pass", "fail", "confirm", "waiting", "person"]);
const form = z.enum(["device", "plate"]);
const problems = z.array(
  z.strictObject({
    check: z.string().min(1),
    severity: z.enum(["stops", "asks", "notes"]),
    says: z.string().min(1),
    fix: z.string().min(1),
    spots: z.array(
      z.strictObject({
        file: z.string(),
        field: z.string().nullable(),
        label: z.string().nullable(),
        row: z.int().min(1).nullable(),
      }),
    ),
    facts: z.record(z.string(), z.union([z.string(), z.number(), z.array(z.string())])),
  }),
);
const shape = z.strictObject({
  verdict,
  sheets: z.array(
    z.strictObject({
      file: z.string(),
      kind: form,
      edition: z.string(),
      order: z.string().nullable(),
      project: z.string().nullable(),
      station: z.string().nullable(),
      position: z.int().nullable(),
      verdict,
      problems,
    }),
  ),
  orders: z.array(
    z.strictObject({
      order: z.string().min(1).nullable(),
      project: z.string().nullable(),
      verdict,
      missing: z.array(
        z.strictObject({
          station: z.string().min(1).nullable(),
          position: z.int().min(1).nullable(),
          kind: form,
        }),
      ),
      problems,
    }),
  ),
  attachments: z.array(
    z.strictObject({
      file: z.string(),
      kind: z.enum(["sheet", "unknown-form", "no-form", "printed", "locked", "damaged", "other"]),
      problems,
    }),
  ),
  problems,
});

test("every report has the same shape, survives being written, and holds every problem", () => {
  fc.assert(
    fc.property(reports, (report) => {
      const json = reportJson(report);
      expect(JSON.parse(JSON.stringify(json))).toEqual(json);
      const read = shape.parse(json);
      const held = [read, ...read.sheets, ...read.orders, ...read.attachments].flatMap((one) => one.problems);
      expect(held.map(({ check }) => check).toSorted()).toEqual(
        everyProblem(report)
          .map(({ check }) => check)
          .toSorted(),
      );
    }),
  );
});

test("a problem points at the file, the field, its label and the row", () => {
  const json = reportJson(reportOn([plate(), device({}, { "3": ["DIM", "CONFERENCE"] })]));
  expect(json.sheets[1]).toMatchObject({
    file: "S-104 pos 2.pdf",
    kind: "device",
    edition: "device-26c",
    order: "BW-2207",
    project: "Larkspur Library",
    station: "S-104",
    position: 2,
    verdict: "fail",
    problems: [
      {
        check: "row-too-long",
        severity: "stops",
        says: "Row 2 of button 3 has 10 characters; 8 can be cut.",
        spots: [{ file: "S-104 pos 2.pdf", field: "row.3.2", label: "Face 3, row 2", row: 2 }],
        facts: { length: 10, limit: 8, typed: "CONFERENCE" },
      },
    ],
  });
  expect(json.orders[0]?.missing).toEqual(
    [1, 3, 4].map((position) => ({ station: "S-104", position, kind: "device" })),
  );
});

test("what is not known is null", () => {
  const sheets = completeOrder().map((sheet) => without(sheet, "order", "project", "mark"));
  const json = reportJson(reportOn(sheets));
  expect(json.sheets[0]).toMatchObject({ order: null, project: null, station: null, position: null });
  expect(json.orders[0]).toMatchObject({ order: null, project: null });
});
