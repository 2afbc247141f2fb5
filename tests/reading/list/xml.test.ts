import { expect, test } from "vitest";
import { isOn, readXml } from "../../../src/reading/list/workbook/xml.ts";

/** All that is heard of a document, in its order. */
function heard(xml: string): unknown[] {
  const all: unknown[] = [];
  readXml(xml, {
    open: (name, attributes) => all.push([name, attributes]),
    close: (name) => all.push(`/${name}`),
    text: (text) => all.push(text),
  });
  return all;
}

// XML 1.0 §4.1, §4.6, §2.7
test.each([
  ["<a>&amp;&lt;&gt;&quot;&apos;</a>", [["a", {}], "&<>\"'", "/a"]],
  ["<a>&#65;&#x42;&#x1F600;&#233;</a>", [["a", {}], "AB😀é", "/a"]],
  ["<a><![CDATA[<b>&amp;]]></a>", [["a", {}], "<b>&amp;", "/a"]],
  ['<a b="&quot;&#x41;"/>', [["a", { b: '"A' }], "/a"]],
  ['<x:a r:id="1" c="2"/>', [["a", { id: "1", c: "2" }], "/a"]],
] as const)("%s is read", (xml, all) => {
  expect(heard(xml)).toEqual(all);
});

test.each([
  ["a document type", "<!DOCTYPE a><a/>"],
  ["an entity that nobody declares", "<a>&nbsp;</a>"],
  ["a bare sign of an entity", "<a>R & D</a>"],
  ["what ends too soon", "<a"],
  ["an attribute without a value", "<a b/>"],
  ["an end of something else", "<a></b>"],
])("%s is none of a workbook", (_, xml) => {
  expect(() => heard(xml)).toThrow();
});

test("a yes is 1, true or on, and nothing else", () => {
  const said = ["1", "true", "on", "0", "false", "off", "", undefined];
  expect(said.filter((value) => isOn(value))).toEqual(["1", "true", "on"]);
});
