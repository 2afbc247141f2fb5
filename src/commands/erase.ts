import { counted, oneLine } from "../answer/one-line.ts";
import { table } from "../answer/table.ts";
import { dateIn } from "../calendar/dates.ts";
import {
  deletedWords,
  elsewhereWords,
  eraseDue,
  erasePerson,
  planDue,
  planErasing,
  sizeOf,
} from "../intake/erase.ts";
import type { ErasePlan } from "../ports/store.ts";
import { CannotRun, defineCommand, reasonOf } from "./command.ts";
import { configure, settingsOption } from "./configuration.ts";
import { openRecordThere, recordName } from "./record.ts";
import { erasingOf } from "./rules.ts";
import { systemClock } from "./system-clock.ts";

export const erase = defineCommand({
  name: "erase",
  words: [0, 1],
  details: `Without --really it only lists what would go. Letters, files, answers, addresses, names and legends go; that a letter
came when, and to what verdict and which checks, stays under a stand-in such as erased-17, so that “burin day” of any
day counts the same. Nothing goes while a letter is being answered or waits for a person, or while an order is not
done with; a released order stays until “burin cut” has closed it. --due is all that nothing came for in
erase_after_days of the settings; the worker erases that by itself each night. The reason stays in the record: name nobody
in it. Whether and when you must or may erase, ask whoever is responsible for data protection at your firm. Ends with 1
where something is in the way. ${elsewhereWords}`,
  options: {
    by: { type: "string", takes: "NAME", tells: "who erases ADDRESS; has to be given" },
    why: { type: "string", takes: "TEXT", tells: "the reason, for the record; has to be given" },
    really: { type: "boolean", tells: "erase, for good" },
    "give-up": { type: "boolean", tells: "give up orders that are not done with, and erase them too" },
    due: {
      type: "boolean",
      tells: "all that is older than erase_after_days, as the worker erases it at night",
    },
    ...settingsOption,
  },
  async run(
    [address],
    { by = "", why = "", really, due: isDue, settings, "give-up": givesUp = false },
    { out, err },
  ) {
    if ((address === undefined) === (isDue === undefined))
      throw new CannotRun("say whom to erase, by the address, or --due");
    const [name, reason] = [by.trim(), why.trim()];
    if (really && address !== undefined && (name === "" || reason === ""))
      throw new CannotRun("say who erases, and why: --by NAME --why TEXT");
    if (address !== undefined && reason.toLowerCase().includes(address.toLowerCase()))
      throw new CannotRun("the reason stays in the record: name nobody in it");
    const configuration = await configure(settings);
    const { time_zone: zone, erase_after_days: days } = configuration.settings;
    if (isDue && days === undefined) throw new CannotRun("the settings have no erase_after_days");
    const store = await openRecordThere(configuration, systemClock);
    const desk = { store, clock: systemClock, rules: erasingOf(configuration) };
    try {
      if (address === undefined) {
        const due = really ? await eraseDue(desk) : { ...(await planDue(desk)), deleted: undefined };
        const what = `what ${counted(due.people, "sender")} had in the record and nothing came for in ${days} days`;
        out(
          (due.deleted === undefined
            ? [`Would be erased: ${what}.`, notYet]
            : [`Erased: ${what}.`, ...deletedWords(due.deleted)]
          ).join("\n"),
        );
        if (due.inTheWay.length > 0) err(inTheWayText(due));
        return due.inTheWay.length > 0 ? 1 : 0;
      }
      const whom = { address: address.toLowerCase(), givesUp };
      if (!really) {
        const plan = await planErasing(desk, whom);
        out(planText(plan, whom.address, zone));
        if (plan.inTheWay.length > 0) err(inTheWayText(plan));
        return plan.inTheWay.length > 0 ? 1 : 0;
      }
      const { standIn, deleted, ...erased } = await erasePerson(desk, whom, { name, why: reason });
      if (standIn === undefined) {
        if (erased.inTheWay.length === 0) out(nothing(whom.address));
        else err(`Nothing is erased.\n${inTheWayText(erased)}`);
        return erased.inTheWay.length === 0 ? 0 : 1;
      }
      out(
        [
          `Erased: ${sizeOf(erased)}. They are counted as ${standIn}.`,
          ...deletedWords(deleted),
          ...elsewhereText(erased),
          elsewhereWords,
        ].join("\n"),
      );
      return 0;
    } catch (cause) {
      if (cause instanceof CannotRun || (cause as { readonly code?: unknown }).code === undefined)
        throw cause;
      throw new CannotRun(
        `erasing in ${recordName(configuration)} was cut short; do it again: ${reasonOf(cause)}`,
        { cause },
      );
    } finally {
      await store.close();
    }
  },
});

const notYet = "Nothing is erased yet; --really erases it for good.";

function nothing(address: string): string {
  return `The record has nothing of ${address}.`;
}

/** What would go. */
function planText(plan: ErasePlan, address: string, zone: string): string {
  const { letters, orders } = plan;
  if (letters.length + orders.length === 0) return [nothing(address), ...elsewhereText(plan)].join("\n");
  return [
    `Would be erased${plan.inTheWay.length === 0 ? "" : ", once nothing is in the way"}: ${sizeOf(plan)}.`,
    ...(orders.length === 0
      ? []
      : [`Orders: ${orders.map((one) => oneLine(one, 40) || "(no number)").join(", ")}`]),
    table([
      ["letter", "received", "from", "subject"],
      ...letters.map(({ letter, receivedAt, from = "", subject }) => [
        String(letter),
        dateIn(receivedAt, zone),
        oneLine(from, 40),
        oneLine(subject, 60),
      ]),
    ]),
    ...elsewhereText(plan),
    notYet,
  ].join("\n");
}

function elsewhereText({ elsewhere }: Pick<ErasePlan, "elsewhere">): string[] {
  return [...Map.groupBy(elsewhere, ({ buyer }) => buyer)].map(
    ([buyer, some]) =>
      `Letters ${some.map(({ letter }) => letter).join(", ")} belong to orders of ${buyer}, and go with those.`,
  );
}

function inTheWayText({ inTheWay }: Pick<ErasePlan, "inTheWay">): string {
  return ["In the way:", ...inTheWay.map(({ what, why }) => `  ${oneLine(what, 60)}: ${why}`)].join("\n");
}
