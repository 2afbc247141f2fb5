import { mkdtempSync, rmSync, statfsSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { run } from "../../make/program.ts";
import { until } from "../rig/desk.ts";
import { alice, desk } from "../rig/rig.ts";
import { withRig } from "../rig/with-rig.ts";
import { answersTo, rowOf, setUp, startWorker } from "./burin.ts";
import { letterBytes } from "./letters.ts";

const disk = mkdtempSync(join(tmpdir(), "burin-disk-"));
const mounted = process.getuid?.() === 0 && canMount();

function canMount(): boolean {
  try {
    run("mount", "-t", "tmpfs", "-o", "size=320m", "tmpfs", disk);
    return true;
  } catch {
    return false; // in a container without that right
  }
}

if (!mounted) {
  console.warn("left out: a full disk, for only root can make a small one");
  test.skip("a full disk (left out: no small disk can be mounted)");
} else
  await withRig("a desk whose disk is full", (rig) => {
    const setup = setUp(rig, { record: join(disk, "record") });
    const worker = startWorker(setup);
    afterAll(async () => {
      await worker.end("SIGKILL");
      run("umount", disk);
      rmSync(disk, { recursive: true });
    });
    const answers = (name: string) => answersTo(rig, alice, `<${name}@brightwire.example>`);

    test("answers nothing that it cannot record, says so, and goes on when there is room", async () => {
      await rig.deliver(alice, desk, await letterBytes("before"));
      await until(async () => (await answers("before")).length === 1);
      const filler = join(disk, "filler");
      const { bavail, bsize } = statfsSync(disk);
      // All but what the record's own journal may take in the same moment.
      run("fallocate", "-l", String(bavail * bsize - 1_000_000), filler);
      expect(statfsSync(disk).bavail * bsize).toBeLessThanOrEqual(1_000_000);
      await rig.deliver(alice, desk, await letterBytes("meanwhile"));
      await until(() => worker.log().includes("the record's disk is nearly full: no letter is taken up"));
      expect(rowOf(setup, "meanwhile")).toBeUndefined();
      expect(await answers("meanwhile")).toEqual([]);
      rmSync(filler);
      await until(async () => (await answers("meanwhile")).length === 1);
      expect(await worker.end("SIGTERM")).toBe(0);
    });
  });
