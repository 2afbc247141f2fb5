import { Resolver } from "node:dns/promises";
import { expect, test } from "vitest";
import { openNames } from "../../src/sandbox/names.ts";

test("the name servers that are named are asked, or those of the system", () => {
  expect(openNames(["192.0.2.53", "192.0.2.54:5353"]).getServers()).toEqual([
    "192.0.2.53",
    "192.0.2.54:5353",
  ]);
  expect(openNames([]).getServers()).toEqual(new Resolver().getServers());
});
