import { expect, test } from "vitest";
import { labelKey, listForm } from "../../../src/reading/list/list-form.ts";
import { maker } from "../../make/config.ts";

test("a list asks which faces stay plain only where the form of a device has boxes for that", () => {
  const asks = (editions: typeof maker.editions) =>
    listForm(editions)?.columns.filter(({ on }) => on === "plain") ?? [];
  expect(asks(maker.editions)).toEqual([{ label: "Leave plain", place: "plain.1", on: "plain" }]);
  const without = maker.editions.map((edition) => ({
    ...edition,
    fields: edition.fields.filter(({ place }) => place?.startsWith("plain.") !== true),
  }));
  expect(asks(without)).toEqual([]);
});

const form = listForm(maker.editions);
const labels = (on: string, fields = form?.columns) =>
  fields?.filter((field) => field.on === on).map(({ label }) => label);

test("the head asks what every sheet of an order says alike, and what its devices mostly do", () => {
  const address = ["company", "street", "city", "state", "ZIP or postal code"];
  expect(labels("every", form?.head)).toEqual([
    "Contact name",
    "E-mail",
    "Phone",
    "Project name",
    "Order number",
    ...address.map((part) => `Bill to: ${part}`),
    "Ship to: same as bill-to",
    ...address.map((part) => `Ship to: ${part}`),
  ]);
  expect(labels("device", form?.head)).toEqual(["Finish", "Lettering"]);
  expect(form?.head.map(({ on }) => on).slice(-3)).toEqual(["every", "device", "device"]);
});

test("the columns are the device, its legends, the rest, and what the plate has otherwise", () => {
  const before = ["Station mark", "Gangs of the plate", "Position", "Layout", "One button: legend sits at"];
  expect(labels("device")?.slice(0, 9)).toEqual([
    ...before,
    "Finish",
    "Lettering",
    "Plate legend, row 1",
    "Button 1, row 1",
  ]);
  expect(labels("device")?.slice(-3)).toEqual(["Button 8, row 2", "Part key", "Notes"]);
  expect(form?.columns.slice(-5).map(({ label, place }) => `${label}: ${place}`)).toEqual([
    "Leave plain: plain.1",
    "Part key: part-key",
    "Notes: notes",
    "Plate: finish: finish",
    "Plate: lettering: lettering",
  ]);
});

test("a list asks what the editions ask that are drawn here and in use", () => {
  const drawn = maker.editions.filter((edition) => edition.drawn);
  expect([form?.device, form?.plate]).toEqual(
    ["device", "plate"].map((kind) => drawn.find((one) => one.form === kind)),
  );
  const changed = (kind: string, change: object) =>
    listForm(drawn.map((edition) => (edition.form === kind ? { ...edition, ...change } : edition)));
  for (const change of [{ drawn: false }, { replacedBy: "device-5" }]) {
    expect(changed("device", change)).toBeUndefined();
    const alone = changed("plate", change);
    expect(alone?.plate).toBeUndefined();
    expect(labels("plate", alone?.columns)).toEqual([]);
  }
});

test("labels are compared by their letters and digits alone", () => {
  const said = ["Button 1, row 1", "button 1 row 1:", " BUTTON\u00a01 (ROW\u00a01)", "Ｂutton 1, row 1"];
  expect(new Set(said.map(labelKey))).toEqual(new Set(["button1row1"]));
  expect(labelKey("Straße №")).toBe("straßeno");
});
