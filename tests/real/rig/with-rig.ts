import { afterAll, describe, test } from "vitest";
import { type Rig, startRig } from "./rig.ts";

/** Tests against real mail servers; left out, with the reason, where none can be started. */
export async function withRig(name: string, tests: (rig: Rig) => void): Promise<void> {
  const rig = await startRig();
  if ("why" in rig) {
    console.warn(`left out: ${name} on real servers, for ${rig.why}`);
    test.skip(`${name} (left out: ${rig.why})`);
    return;
  }
  describe(name, () => {
    afterAll(() => rig.stop());
    tests(rig);
  });
}
