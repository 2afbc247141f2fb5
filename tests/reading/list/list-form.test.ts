import { expect, test } from "vitest";
import { listForm } from "../../../src/reading/list/list-form.ts";
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
