import { peopleLines } from "../audit/people-text.ts";
import { readPeople } from "../intake/tell-people.ts";
import { defineCommand } from "./command.ts";
import { configure, settingsOption } from "./configuration.ts";
import { readRecord } from "./record.ts";
import { systemClock } from "./system-clock.ts";

export const people = defineCommand({
  name: "people",
  words: [0, 0],
  details:
    "First senders who have no answer, then orders with points for a person, then letters about no order; the oldest\nfirst. Each with whom to call, its points under the numbers of our answers, and the command that settles it.\nEnds with 1 while something waits.",
  options: { json: { type: "boolean", tells: "print one JSON object instead" }, ...settingsOption },
  async run(_, { json, settings }, { out }) {
    const store = await readRecord(await configure(settings));
    const now = systemClock.now();
    const waiting = await readPeople(store, now);
    await store.close();
    if (json) out(JSON.stringify({ waiting }, null, 2));
    else out(waiting.length === 0 ? "Nothing waits for a person." : peopleLines(waiting, now).join("\n\n"));
    return waiting.length === 0 ? 0 : 1;
  },
});
