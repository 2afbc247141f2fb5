import { type ChildProcess, fork } from "node:child_process";
import type { Log } from "../ports/log.ts";
import type { Opened } from "../ports/reader.ts";
import type { KnownForms } from "../reading/page/known-forms.ts";
import type { Limits } from "./limits.ts";
import { residentMemory, watchMemory } from "./memory.ts";
import {
  type Answers,
  type Beforehand,
  type Inputs,
  type Job,
  type Message,
  type Op,
  waitsForForms,
} from "./message.ts";
import { type Allowance, type TimeWatch, watchTime } from "./processor-time.ts";
import { shapes } from "./shape.ts";

/** A process that opens one thing at a time. */
export interface ReaderProcess {
  /** Not to be called while a job is running. Rejects if the process does not start, or is ended meanwhile. */
  readonly run: <O extends Op>(
    op: O,
    bytes: Uint8Array,
    input: Inputs[O],
    most: Allowance,
  ) => Promise<Outcome<O>>;
  /** Whether it can be given another job. */
  readonly usable: () => boolean;
  /** Resolves when it is gone. */
  readonly end: () => Promise<void>;
}

/** What came of a job, and what it has taken. */
interface Outcome<O extends Op> {
  readonly opened: Opened<Answers[O]>;
  readonly taken: Allowance;
  /** Whether the process was lost to the job, perhaps after a part of the answer had come. */
  readonly lost: boolean;
}

/** Why a process was lost; "ended" by whoever started it. */
type Why = Exclude<Extract<Opened<never>, { ok: false }>["why"], "no time left"> | "ended";

/**
 * A busy machine takes its time to start a process. One that takes longer than this, in milliseconds, never will
 * start.
 */
const startMs = 30_000;

export function startProcess(program: string, limits: Limits, log: Log, forms?: KnownForms): ReaderProcess {
  const child = forked(program, limits, forms);
  hold(child, false);
  if (forms !== undefined) child.send({ forms } satisfies Beforehand, () => undefined);
  const ready = new Promise<void>((resolve) => child.once("message", () => resolve()));
  const life = lifeOf(child);

  async function start(): Promise<void> {
    const slow = setTimeout(life.kill, startMs, "too slow");
    await Promise.race([ready, life.gone]);
    clearTimeout(slow);
  }

  // Waited for once. A race at each job would add to what waits for the end of the process, as long as it lives.
  let begun: Promise<void> | undefined;
  async function started(): Promise<void> {
    await (begun ??= start());
    const why = life.lostTo();
    if (why === "ended") throw new Error("the reader was closed");
    if (why !== undefined) throw new Error(`the reader process does not start: ${why}`);
  }

  let jobs = 0;
  let held = 0;
  return {
    run: async (op, bytes, input, most) => {
      hold(child, true);
      await started();
      const watch = watchMemory(child.pid ?? 0, limits.memory, () => life.kill("too much memory"));
      const time = watchTime(child.pid ?? 0, most, () => life.kill("too slow"));
      const value = await answerTo({ id: ++jobs, op, bytes, input }, { child, life, time, limits, log });
      const taken = time.taken();
      watch.stop();
      time.stop();
      held = await residentMemory(child.pid ?? 0);
      hold(child, false);
      const why = life.lostTo();
      if (why === "ended") throw new Error("the reader was closed");
      if (why !== undefined)
        log.warn(
          {
            op,
            bytes: bytes.length,
            why,
            ms: Math.round(taken.clockMs),
            processorMs: Math.round(taken.processorMs),
            peakMb: Math.round(watch.peak() / 1024 / 1024),
            pagesOnly: value !== undefined,
          },
          "a reader process was lost to what it was given",
        );
      const opened = value === undefined ? { ok: false, why: why ?? "died" } : { ok: true, value };
      return { opened, taken, lost: why !== undefined } as Outcome<typeof op>;
    },
    // A process that has grown gets no further file, since that file would be blamed for the memory of this one.
    usable: () => !life.isOver() && held < limits.memory * limits.mostHeld,
    end: async () => {
      if (life.lostTo() === undefined) hold(child, true);
      life.kill("ended");
      await life.gone;
    },
  };
}

function forked(program: string, limits: Limits, forms: KnownForms | undefined): ChildProcess {
  return fork(program, forms === undefined ? [] : [waitsForForms], {
    serialization: "advanced",
    stdio: ["ignore", "ignore", "ignore", "ipc"],
    env: {},
    // It may read, since it loads its own code. It may not write, start programs or load native code.
    // A young generation of 16 MB or more grows the process by a third, and hardly saves time.
    execArgv: [
      `--max-old-space-size=${limits.heapMb}`,
      "--max-semi-space-size=8",
      "--permission",
      "--allow-fs-read=*",
      "--allow-worker",
    ],
  });
}

/** How a process ends. */
interface Life {
  /** Ends it. The first reason counts. */
  readonly kill: (why: Why) => void;
  /** Why it was lost; undefined while it lives. */
  readonly lostTo: () => Why | undefined;
  /** Whether it is lost, or being ended. */
  readonly isOver: () => boolean;
  /** Resolves when it is lost. */
  readonly gone: Promise<void>;
}

function lifeOf(child: ChildProcess): Life {
  let killedFor: Why | undefined;
  let lostTo: Why | undefined;
  const gone = new Promise<void>((resolve) => {
    const lose = (why: Why): void => {
      lostTo ??= killedFor ?? why;
      resolve();
    };
    child.on("error", () => lose("died"));
    // "exit" may come before the last words of the process have been read, so it is not used. V8 aborts when its heap
    // is full.
    child.once("close", (_, signal) => lose(signal === "SIGABRT" ? "too much memory" : "died"));
  });
  return {
    kill: (why) => {
      killedFor ??= why;
      child.kill("SIGKILL");
    },
    lostTo: () => lostTo,
    isOver: () => lostTo !== undefined || killedFor !== undefined,
    gone,
  };
}

/** A process with a job, and what holds it to its limits. */
interface AtWork {
  readonly child: ChildProcess;
  readonly life: Life;
  readonly time: TimeWatch;
  readonly limits: Limits;
  readonly log: Log;
}

/** The answer, or as much of it as had come when the process was lost. */
async function answerTo<O extends Op>(
  job: Job<O>,
  { child, life, time, limits, log }: AtWork,
): Promise<Answers[O] | undefined> {
  const { promise, resolve } = Promise.withResolvers<Answers[O] | undefined>();
  let early: Answers[O] | undefined;
  const lost = (): void => resolve(early);
  const take = (message: Message): void => {
    if (!("id" in message) || message.id !== job.id) return;
    const shaped = shapes[job.op].safeParse("early" in message ? message.early : message.answer);
    if (!shaped.success) {
      log.warn(
        { op: job.op, at: shaped.error.issues[0]?.path.join(".") },
        "a reader's answer has no known shape",
      );
      return life.kill("died");
    }
    if ("answer" in message) return resolve(shaped.data);
    early = shaped.data;
    time.allow({ processorMs: limits.pagesMs, clockMs: limits.pagesMs * limits.patience });
  };
  child.once("close", lost).on("message", take);
  // An error in sending is ignored: the process is gone then, which is told by itself.
  child.send(job, () => undefined);
  try {
    return await promise;
  } finally {
    child.off("close", lost).off("message", take);
  }
}

/**
 * Says whether Node has to wait for the process. It has to only while there is a job, or while the process is being
 * ended.
 */
function hold(child: ChildProcess, wanted: boolean): void {
  if (wanted) {
    child.ref();
    child.channel?.ref();
  } else {
    child.unref();
    child.channel?.unref();
  }
}
