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

/** How a process opens what it is given. `early` is for what is known before the part that may take too long. */
export type Openers = {
  readonly [O in Op]: (
    bytes: Uint8Array,
    early: (answer: Answers[O]) => Promise<void>,
    input: Inputs[O],
    forms: KnownForms | undefined,
  ) => Promise<Answers[O]>;
};

/**
 * Makes this process a reader: it takes jobs from its parent, one at a time, and answers them. An opener
 * that throws ends the process, and its parent says so. `prepare` is called once, for a process that is given forms.
 */
export function serve(
  openers: Openers,
  prepare: (forms: KnownForms) => Promise<void> = () => Promise.resolve(),
): void {
  // pdf.js leaves promises behind that nobody holds, and on damaged files they reject. They spoil nothing
  // that the job at hand is waiting for.
  process.on("unhandledRejection", () => undefined);
  // Whoever stops the program, from the keyboard or as a service, signals its whole group. The program
  // finishes its letter first and needs its readers for that; it ends them itself.
  process.on("SIGINT", () => undefined);
  process.on("SIGTERM", () => undefined);
  process.on("disconnect", () => process.exit());
  // A process that is busy does not notice that its parent is gone, and then nobody holds it to its limits.
  new Worker(new URL("./orphan.ts", import.meta.url), { workerData: process.ppid }).unref();

  let forms: KnownForms | undefined;
  const open = <O extends Op>({ id, op, bytes, input }: Job<O>): Promise<Answers[O]> =>
    openers[op](bytes, (answer) => tell({ id, early: answer }), input, forms);
  process.on("message", (job: Job | Beforehand) => {
    if ("forms" in job) {
      ({ forms } = job);
      // What cannot be prepared fails again where it is wanted, and then a person is asked.
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
  // One that is to be given forms is ready when it has them: preparing them is not to be taken off a job's time.
  if (!process.argv.includes(waitsForForms)) void tell({ ready: true });
}

/** Resolves when all of it is written: a process that is kept busy right afterwards would not get to it. */
function tell(message: Message): Promise<void> {
  return new Promise((resolve) => {
    process.send?.(message, undefined, undefined, () => resolve());
  });
}
