import { expect, test } from "vitest";
import { bytesFirst, stillThere } from "../../src/store/bytes-first.ts";
import { openSqlite } from "../../src/store/sqlite.ts";

test("bytes that an erasing has deleted meanwhile are put once more, and their rows written again", async () => {
  const there = new Set<string>();
  const done: string[] = [];
  const has = (sha: string) => Promise.resolve(there.has(sha));
  const put = () => {
    done.push("put");
    // The first time they are erased again at once.
    if (done.length > 2) there.add("a");
    return Promise.resolve(["a"]);
  };
  const written = await bytesFirst(put, async (shas) => {
    done.push("write");
    await stillThere(openSqlite(":memory:"), { has }, shas);
    return shas;
  });
  expect([written, done]).toEqual([["a"], ["put", "write", "put", "write"]]);
});

test("what fails for another reason fails", async () => {
  const writing = bytesFirst(
    () => Promise.resolve([]),
    () => Promise.reject(new Error("the disk is full")),
  );
  await expect(writing).rejects.toThrow("the disk is full");
});
