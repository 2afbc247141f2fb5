import { describe, expect, test } from "vitest";
import { fileLinksIn } from "../../../src/reading/letter/links.ts";

describe("a link to files is", () => {
  test.each([
    ["a token on a host that shares", "See https://share.brightwire.example/s/kT7pQ2xZ9d thanks"],
    ["the same at the end of a sentence", "Here: https://brightwire-my.sharing-drive.example/f/kT7pQ2xZ9d."],
    ["a token in the query", "https://transfer.example/get?id=0123456789abcdef0123"],
    [
      "an archive on any host, where words speak of files",
      "Download the sheets: https://ftp.example/out/BW-2207.zip",
    ],
    [
      "a token on any host, where words speak of files",
      "The files are here: https://wx.example/t/kT7pQ2xZ9d",
    ],
    ["a token behind the first word of a letter", "Drawings: https://wx.example/t/kT7pQ2xZ9d"],
    ["hidden behind words in HTML", '<a class="b" href="https://wx.example/t/kT7pQ2xZ9d">Download files</a>'],
    [
      "wrapped by a mail server",
      "https://safe.example/?url=https%3A%2F%2Fdrive.example%2Ff%2FkT7pQ2xZ9d&data=1",
    ],
  ])("%s", (_, text) => {
    expect(fileLinksIn(text)).toHaveLength(1);
  });

  test("given without the stop behind it, and once", () => {
    const link = "https://drive.example/f/kT7pQ2xZ9d";
    expect(fileLinksIn(`${link}. Again: ${link}!`)).toEqual([link]);
  });
});

describe("no link to files is", () => {
  test.each([
    ["a home page", "Brightwire Electric, https://www.brightwire.example/"],
    ["the home page of a host that shares", "https://share.example/"],
    ["a page in words", "https://www.brightwire.example/about-us/people"],
    ["a map, a meeting or a tracked link", "Find us: https://maps.example/place/kT7pQ2xZ9d"],
    ["a host whose name only holds such a word", "https://driveways.example.sharpe.example/x/kT7pQ2xZ9d"],
    [
      "the target of an attribute that only ends like it",
      "<a xhref=https://share.example/s/kT7pQ2xZ9d>x</a>",
    ],
    ["what is of another kind than the web's", "Files: shttps://share.example/s/kT7pQ2xZ9d"],
    ["no link at all", "Please share the files"],
    ["what no URL can be", "https://:x/download.pdf"],
  ])("%s", (_, text) => {
    expect(fileLinksIn(text)).toEqual([]);
  });
});

/** Edges of what looks like a link to files. */
test.each([
  ["a token of seven characters in the path", "https://share.example/s/kT7pQ2x", 0],
  ["a token of eight", "https://share.example/s/kT7pQ2xZ", 1],
  ["fifteen characters in the query", "https://share.example/get?id=kT7pQ2xZkT7pQ2x", 0],
  ["sixteen", "https://share.example/get?id=kT7pQ2xZkT7pQ2xZ", 1],
  ["a word sixty characters before", `Hi drawings${" ".repeat(52)}https://wx.example/t/kT7pQ2xZ9d`, 1],
  ["one further away", `Hi drawings${" ".repeat(53)}https://wx.example/t/kT7pQ2xZ9d`, 0],
  ["a word sixty characters behind", `https://wx.example/t/kT7pQ2xZ9d${" ".repeat(52)}drawings`, 1],
  ["one further away than that", `https://wx.example/t/kT7pQ2xZ9d${" ".repeat(53)}drawings`, 0],
  ["a word that only holds such a word", "My profile: https://wx.example/t/kT7pQ2xZ9d", 0],
  ["a word in another link", "https://wx.example/t/kT7pQ2xZ9d https://wx.example/files", 0],
])("%s", (_, text, links) => {
  expect(fileLinksIn(text)).toHaveLength(links);
});

test("of fifty thousand links twenty are given", () => {
  const text = Array.from({ length: 50_000 }, (_, i) => `<a href=https://share.example/s/kT7pQ2xZ${i}>`).join(
    "",
  );
  expect(fileLinksIn(text)).toHaveLength(20);
});
