import { Worker } from "node:worker_threads";
import type { KnownForms } from "../reading/page/known-forms.ts";
import {
  type Answers,
  type Beforehand,
  type Inputs,
  type Job,
  type Message,
  type Op,
  waitsForForms,
} from "./message.ts";

/** How a process opens what it is given. `early` takes what is known before the part that may take too long. */
export type Openers = {
  readonly [O in Op]: (
    bytes: Uint8Array,
    early: (answer: Answers[O]) => Promise<void>,
    input: Inputs[O],
    forms: KnownForms | undefined,
  ) => Promise<Answers[O]>;
};

/**
 * Makes this process a reader: it takes jobs from its parent, one at a time, and answers them. If an opener throws,
 * the process ends and its parent reports it. `prepare` is called once, if the process is given forms.
 */
export function serve(
  openers: Openers,
  prepare: (forms: KnownForms) => Promise<void> = () => Promise.resolve(),
): void {
  // pdf.js leaves promises behind that nobody holds. On damaged files they reject, which spoils nothing that the job
  // waits for.
  process.on("unhandledRejection", () => undefined);
  // Whoever stops the program, from the keyboard or as a service, signals its whole group. But the program finishes
  // its letter first and needs its readers for that. It ends them itself.
  process.on("SIGINT", () => undefined);
  process.on("SIGTERM", () => undefined);
  process.on("disconnect", () => process.exit());
  // A busy process does not notice that its parent is gone, and then nobody holds it to its limits.
  new Worker(new URL("./orphan.ts", import.meta.url), { workerData: process.ppid }).unref();

  let forms: KnownForms | undefined;
  const open = <O extends Op>({ id, op, bytes, input }: Job<O>): Promise<Answers[O]> =>
    openers[op](bytes, (answer) => tell({ id, early: answer }), input, forms);
  process.on("message", (job: Job | Beforehand) => {
    if ("forms" in job) {
      ({ forms } = job);
      // What cannot be prepared fails again when it is wanted, and then a person is asked.
      void prepare(forms)
        .catch(() => undefined)
        .then(() => tell({ ready: true }));
      return;
    }
    const { id } = job;
    open(job).then(
      (answer) => tell({ id, answer }),
      () => process.exit(1),
    );
  });
  // A process that is given forms is ready once it has prepared them. That time is not taken off a job.
  if (!process.argv.includes(waitsForForms)) void tell({ ready: true });
}

/** Resolves when all of it is written. A process that is busy right afterwards would not write it. */
function tell(message: Message): Promise<void> {
  return new Promise((resolve) => {
    process.send?.(message, undefined, undefined, () => resolve());
  });
}
