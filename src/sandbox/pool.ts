import { fileURLToPath } from "node:url";
import type { Log } from "../ports/log.ts";
import type { Opened, Reader, TimeLeft } from "../ports/reader.ts";
import type { KnownForms } from "../reading/page/known-forms.ts";
import { type Limits, mostBytes, usualLimits } from "./limits.ts";
import type { Answers, Inputs, Op } from "./message.ts";
import { type ReaderProcess, startProcess } from "./reader-process.ts";
import { shareOf, takeOff } from "./share.ts";

export interface PoolOptions {
  readonly log: Log;
  /** How many processes open files side by side. */
  readonly processes?: number;
  readonly limits?: Partial<Limits>;
  /** The forms that pages are compared with. Without them pages are looked at by themselves. */
  readonly forms?: KnownForms;
  /** The file that a process runs. */
  readonly program?: string;
}

/** A place for one process. When the process is gone another takes it. */
interface Seat {
  process?: ReaderProcess;
}

/**
 * A reader that opens everything in processes of its own. Whatever a stranger's bytes do, they do it to one process,
 * within its limits, and it costs one answer. The first job starts the first process. From then on one is kept ready,
 * since starting takes most of a second.
 */
export function openPool({
  log,
  processes = 2,
  limits: changes = {},
  forms,
  program = fileURLToPath(new URL("./child.ts", import.meta.url)),
}: PoolOptions): Reader {
  const limits = { ...usualLimits, ...changes };
  const free = Array.from({ length: processes }, (): Seat => ({}));
  /** Who waits for a seat, by the letter whose file it is. Letters are served in turn, however many files one has. */
  const waiting = new Map<unknown, PromiseWithResolvers<Seat>[]>();
  const alive = new Set<ReaderProcess>();
  let closed = false;

  function start(): ReaderProcess {
    const started = startProcess(program, limits, log, forms);
    alive.add(started);
    return started;
  }

  function giveUp(old: ReaderProcess): void {
    void old.end().then(() => alive.delete(old));
  }

  /** A process that can be given a job. An idle one may have been ended from outside, for which no job is blamed. */
  function readyIn(seat: Seat): ReaderProcess {
    if (seat.process?.usable()) return seat.process;
    if (seat.process !== undefined) giveUp(seat.process);
    seat.process = start();
    return seat.process;
  }

  /** The next that waits. If more files of its letter wait, those of other letters come first. */
  function nextWaiting(): PromiseWithResolvers<Seat> | undefined {
    const [[letter, turns] = [undefined, []]] = waiting;
    const next = turns.shift();
    waiting.delete(letter);
    if (turns.length > 0) waiting.set(letter, turns);
    return next;
  }

  /**
   * Gives a seat to whoever is next. Otherwise it lies on top of the free ones, so that the warm one
   * serves next.
   */
  function putBack(seat: Seat): void {
    if (!closed) readyIn(seat);
    const next = nextWaiting();
    if (next === undefined) free.push(seat);
    else next.resolve(seat);
  }

  async function wait(letter: unknown): Promise<Seat> {
    const turn = Promise.withResolvers<Seat>();
    waiting.set(letter, [...(waiting.get(letter) ?? []), turn]);
    return turn.promise;
  }

  async function open<O extends Op>(
    op: O,
    bytes: Uint8Array,
    input: Inputs[O],
    time?: TimeLeft,
  ): Promise<Opened<Answers[O]>> {
    if (bytes.length > mostBytes) return { ok: false, why: "too much memory" };
    const seat = free.pop() ?? (await wait(time ?? Symbol("alone")));
    try {
      if (closed) throw new Error("the reader was closed");
      // Name servers take time by the clock and none of the processor.
      const share = shareOf(time, op === "sender" ? { ...limits, patience: 1 } : limits);
      if (share === undefined) return { ok: false, why: "no time left" };
      const { opened, taken, lost } = await readyIn(seat).run(op, bytes, input, share);
      takeOff(time, taken, lost);
      const wasShort = share.processorMs < limits.jobMs && !opened.ok && opened.why === "too slow";
      return wasShort ? { ok: false, why: "no time left" } : opened;
    } finally {
      putBack(seat);
    }
  }

  return {
    letter: (bytes, time) => open("letter", bytes, undefined, time),
    file: (bytes, time) => open("file", bytes, undefined, time),
    sender: (bytes, inquiry) => open("sender", bytes, inquiry),
    mark: (bytes, sheet, problems, mending) => open("mark", bytes, { sheet, problems, mending }),
    page: (bytes, wanted) => open("page", bytes, wanted),
    outline: (bytes) => open("outline", bytes, undefined),
    busy: () => processes - free.length,
    close: async () => {
      closed = true;
      await Promise.all([...alive].map((one) => one.end()));
    },
  };
}
