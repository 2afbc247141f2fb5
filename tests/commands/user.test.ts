import { expect, test } from "vitest";
import { user } from "../../src/commands/user.ts";
import { settingsFile } from "../make/settings-file.ts";

test("a user who is there already keeps name and role where none is given", async () => {
  const { file } = settingsFile();
  const run = async (...args: readonly string[]): Promise<string> => {
    const told: string[] = [];
    const tell = (text: string) => told.push(text);
    const io = { out: tell, err: tell, progress: () => undefined };
    const code = await user.run([...args, "--settings", file], io);
    return `${code}: ${told.join("\n")}`;
  };
  const save = (...args: readonly string[]) => run(...args, "--no-password");
  expect(await save("ines", "--name", "Ines Calloway", "--role", "release")).toBe(
    "0: ines may come in as release.",
  );
  expect(await save("ines")).toBe("0: ines may come in as release.");
  expect(await save("tom")).toBe("0: tom may come in as see.");
  expect(await run()).toMatch(/ines +Ines Calloway +release *\ntom +tom +see/);
  expect(await save("ines", "--role", "act")).toBe("0: ines may come in as act.");
  expect(await run()).toMatch(/ines +Ines Calloway +act *\n/);
});
