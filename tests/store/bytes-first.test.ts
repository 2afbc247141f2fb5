import { expect, test } from "vitest";
import { bytesFirst, stillThere } from "../../src/store/bytes-first.ts";

test("bytes that an erasing has deleted meanwhile are put once more, and their rows written again", async () => {
  const there = new Set<string>();
  const done: string[] = [];
  const blobs = { has: (sha: string) => there.has(sha) } as Parameters<typeof stillThere>[0];
  const put = () => {
    done.push("put");
    // The first time they are erased again at once.
    if (done.length > 2) there.add("a");
    return Promise.resolve(["a"]);
  };
  const written = await bytesFirst(put, (shas) => {
    done.push("write");
    stillThere(blobs, shas);
    return Promise.resolve(shas);
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
