import { Mod11_2, Mod37_36 } from "@konfirm/iso7064";
import * as fc from "fast-check";
import { expect, test } from "vitest";
import {
  checkCharacter,
  isUnchecked,
  keyReadsRight,
  partKey,
  partKeyOf,
} from "../../src/catalogue/part-key.ts";
import { catalogue } from "../make/config.ts";
import { device, plate } from "../make/sample.ts";

test("check characters are those of ISO/IEC 7064", () => {
  // GRid Standard 2.1 (IFPI): A12425GABC1234002 has the MOD 37-36 check character M.
  expect(checkCharacter("A12425GABC1234002")).toBe("M");
  expect(Mod37_36.validate("A12425GABC1234002M")).toBe(true);
  // ORCID, structure of the identifier: 0000-0002-1825-0097 ends in the MOD 11-2 check character 7.
  expect(Mod11_2.checksum("000000021825009")).toBe("7");
});

test("a key follows from body, finish and lettering", () => {
  expect(partKeyOf(device(), catalogue)).toBe(partKey("D4", "OAT", "INK"));
  expect(partKeyOf(plate(), catalogue)).toBe(partKey("P4", "OAT", "INK"));
  expect(partKeyOf(device({ layouts: ["D2", "D4"] }), catalogue)).toBeUndefined();
});

const alphabet = [..."0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ"];
const keys = fc
  .tuple(
    fc.constantFrom(...catalogue.layouts),
    fc.constantFrom(...catalogue.finishes),
    fc.constantFrom(...catalogue.lettering),
  )
  .map(([layout, finish, lettering]) => partKey(layout.code, finish.code, lettering.code));

test("a key with one character mistaken never reads right", () => {
  fc.assert(
    fc.property(keys, fc.nat(), fc.constantFrom(...alphabet), (key, at, wrong) => {
      const plain = key.replaceAll(/[^A-Z0-9]/g, "");
      const i = at % plain.length;
      fc.pre(plain[i] !== wrong);
      expect(keyReadsRight(plain.slice(0, i) + wrong + plain.slice(i + 1))).toBe(false);
    }),
  );
});

test("separators and small letters do not matter", () => {
  fc.assert(
    fc.property(keys, (key) => {
      expect(keyReadsRight(key)).toBe(true);
      expect(keyReadsRight(key.toLowerCase().replaceAll("/", " "))).toBe(true);
    }),
  );
});

test.each([
  ["D4/OAT/INK", true],
  ["d4 oat ink", true],
  ["D4/OAT/INK-V", false],
  ["D4/OAT/INK-X", false],
  ["D2/OAT/INK", false],
  ["", false],
])("“%s” is D4/OAT/INK-V without its check character: %s", (written, is) => {
  expect(isUnchecked(written, "D4/OAT/INK-V")).toBe(is);
});
