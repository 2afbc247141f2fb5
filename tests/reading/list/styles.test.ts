import { expect, test } from "vitest";
import { looksIn } from "../../../src/reading/list/workbook/styles.ts";

/** Parts of a list of styles, as they follow one another. ECMA-376-1 §18.8.39 */
interface Styles {
  readonly formats?: string;
  readonly fonts?: string;
  readonly fills?: string;
  readonly cells: string;
}

const looks = ({ formats = "", fonts = "", fills = "", cells }: Styles) =>
  looksIn(
    `<styleSheet><numFmts>${formats}</numFmts><fonts><font/>${fonts}</fonts><fills><fill/>${fills}</fills>` +
      `<cellStyleXfs><xf numFmtId="14"/></cellStyleXfs><cellXfs>${cells}</cellXfs></styleSheet>`,
  );
const solid = (colour: string): string =>
  `<fill><patternFill patternType="solid"><fgColor ${colour}/></patternFill></fill>`;

// ECMA-376-1 §18.8.30: 0 is General, 1 is 0 and 49 is @.
test.each([
  ["<xf/>", "General"],
  ['<xf numFmtId="0"/>', "General"],
  ['<xf numFmtId="1"/>', "0"],
  ['<xf numFmtId="49"/>', "@"],
  ['<xf numFmtId="14"/>', "format 14"],
  ['<xf numFmtId="164"/>', "d-mmm"],
  ['<xf numFmtId="165"/>', "format 165"],
])("the format of %s is %s", (cells, format) => {
  const formats = '<numFmt numFmtId="164" formatCode="d-mmm"/>';
  expect(looks({ formats, cells })).toEqual([{ format, struck: false, unseen: false }]);
});

test("each look has the font that it names, and without a name the first", () => {
  const fonts = '<font><strike/></font><font><strike val="0"/></font>';
  const cells = '<xf/><xf fontId="1"/><xf fontId="2"/><xf fontId="9"/>';
  expect(looks({ fonts, cells }).map(({ struck }) => struck)).toEqual([false, true, false, false]);
  const [first] = looksIn("<x><fonts><font><strike/></font></fonts><cellXfs><xf/></cellXfs></x>");
  expect(first?.struck).toBe(true);
});

test("the looks that others are made from are no looks of cells", () => {
  expect(looks({ cells: "<xf/>" })).toHaveLength(1);
});

test.each([
  ['<sz val="3.9"/>', true],
  ['<sz val="4"/>', false],
  ['<color rgb="FFFFFFFF"/>', true],
  ['<color rgb="ffffffff"/>', true],
  ['<color rgb="FFFFFFFE"/>', false],
  ['<color theme="0"/>', true],
  ['<color theme="0" tint="0"/>', true],
  ['<color theme="0" tint="-0.5"/>', false],
  ['<color theme="1"/>', false],
  ['<color indexed="1"/>', true],
  ['<color indexed="9"/>', true],
  ['<color indexed="8"/>', false],
  ['<color auto="1"/>', false],
])("a text of %s on white is unseen: %s", (font, unseen) => {
  expect(looks({ fonts: `<font>${font}</font>`, cells: '<xf fontId="1"/>' })[0]?.unseen).toBe(unseen);
});

test.each([
  ['rgb="FF0000FF"', 'rgb="FF0000FF"', true],
  ['rgb="000000FF"', 'rgb="FF0000ff"', true],
  ['rgb="FF0000FF"', 'rgb="FFFFFFFF"', false],
  ['theme="4" tint="0.4"', 'theme="4" tint="0.4"', true],
  ['theme="4" tint="0.4"', 'theme="4" tint="0.8"', false],
  ['theme="4"', 'theme="4" tint="0.4"', false],
  ['indexed="12"', 'indexed="12"', true],
  ['indexed="12"', 'indexed="13"', false],
  // On a ground of another colour white is seen.
  ['rgb="FFFFFFFF"', 'rgb="FF0000FF"', false],
])("a text of %s on %s is unseen: %s", (colour, ground, unseen) => {
  const fonts = `<font><color ${colour}/></font>`;
  const [look] = looks({ fonts, fills: solid(ground), cells: '<xf fontId="1" fillId="1"/>' });
  expect(look?.unseen).toBe(unseen);
});

test("only a solid ground is one, and each look has the one that it names, without a name the first", () => {
  const fonts = '<font><color rgb="FF0000FF"/></font>';
  const striped = solid('rgb="FF0000FF"').replace("solid", "gray125");
  const unseen = (fills: string, cells: string) => looks({ fonts, fills, cells }).map((look) => look.unseen);
  expect(unseen(striped, '<xf fontId="1" fillId="1"/>')).toEqual([false]);
  expect(unseen(solid('rgb="FF0000FF"'), '<xf fontId="1"/><xf fontId="1" fillId="1"/>')).toEqual([
    false,
    true,
  ]);
  const first = `<x><fonts>${fonts}</fonts><fills>${solid('rgb="FF0000FF"')}</fills><cellXfs><xf/></cellXfs></x>`;
  expect(looksIn(first)[0]?.unseen).toBe(true);
});

test("a colour of something else than a font or a ground is neither", () => {
  const fonts = '<font/><font/><border><left><color rgb="FFFFFFFF"/></left></border>';
  const fills = solid('rgb="FF0000FF"').replace("</patternFill>", '<bgColor rgb="FFFFFFFF"/></patternFill>');
  expect(looks({ fonts, fills, cells: '<xf fontId="2" fillId="1"/>' })).toEqual([
    { format: "General", struck: false, unseen: false },
  ]);
});

test("fonts and grounds of conditional formats, wherever they stand, are none of cells", () => {
  const rule = `<dxfs><dxf><font><strike/><sz val="1"/></font>${solid('rgb="FF0000FF"')}</dxf></dxfs>`;
  const [look] = looksIn(
    `<styleSheet>${rule}<fonts><font><color rgb="FF0000FF"/></font></fonts><fills><fill/></fills>${rule}` +
      "<cellXfs><xf/></cellXfs></styleSheet>",
  );
  expect(look).toEqual({ format: "General", struck: false, unseen: false });
});
