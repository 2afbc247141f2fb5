import { buttonsOf } from "../catalogue/catalogue.ts";
import { defineCommand } from "./command.ts";
import { configure, settingsOption } from "./wire.ts";

export const settings = defineCommand({
  name: "settings",
  takes: "",
  words: [0, 0],
  summary: "Reads the settings, the catalogue and the editions, and says what they come to.",
  details: "Every fault is printed at once as file:line:column path: what is wrong; the exit code is then 2.",
  options: settingsOption,
  async run(_, { settings: given }, { out }) {
    const { file, settings: read, catalogue, editions } = await configure(given);
    out(
      [
        `settings   ${file}`,
        `maker      ${catalogue.maker.name}, ${catalogue.maker.email}`,
        `layouts    ${catalogue.layouts.map((l) => `${l.code} (${buttonsOf(l)} of ${catalogue.device.rows} × ${catalogue.device.characters})`).join(", ")}`,
        `plates     1 to ${catalogue.plate.widths.length} gangs, ${catalogue.plate.rows} × ${catalogue.plate.characters} a gang`,
        `finishes   ${catalogue.finishes.map((f) => f.name).join(", ")}`,
        `lettering  ${catalogue.lettering.map((l) => l.name).join(", ")}`,
        ...editions.map(
          (e) =>
            `edition    ${e.name}: ${e.title}, ${e.fields.length} fields${e.replacedBy === undefined ? "" : `, replaced by ${e.replacedBy}`}`,
        ),
        `record     ${read.record}`,
        `mailbox    ${read.mailbox.folder}`,
        `answers    ${read.answers.folder}, from ${read.answers.from.address}`,
        `day        begins at midnight in ${read.time_zone}`,
        "No faults.",
      ].join("\n"),
    );
    return 0;
  },
});
