import { describe, expect, test } from "vitest";
import { withoutCourtesies } from "../../../src/reading/reply/courtesy.ts";

// ◆ is a courtesy.
test.each([
  ["Let me know if the weather is fine", "◆"],
  ["Let me know if you engrave today", "◆ if you engrave today"],
  ["Let me know if the wire is long", "◆ if the wire is long"],
  ["Let me know if the sheets are lost", "◆ if the sheets are lost"],
  ["Let me know if the names come out", "◆ if the names come out"],
  ["Let me know if you paint it", "◆ if you paint it"],
  ["Greetings from the text people", "◆"],
  ["Greetings from Dana", "◆"],
  ["No rush on this one, we have time", "◆"],
  ["Hello make it, so", "Hello make it, so"],
  ["Could you please confirm receipt?", "◆ ."],
  ["Call me, but let me know", "Call me, ◆"],
  ["Thanks 4 the help", "Thanks for the help"],
  ["one pdf per plate and one per device", "◆"],
  ["one label per device", "one label per device"],
  ["The board has approved everything as it stands there.", "◆ ."],
  ["The board has approved the paint.", "The board has approved the paint."],
  ["Please make as per sheets.", "◆ ."],
  ["Make them as they say, but lower.", "◆ , but lower."],
  ["do like they say", "◆"],
  ["Cut them as shown by Bob", "Cut them as shown by Bob"],
  ["Good to go.", "◆ ."],
  ["Good to go by Friday", "Good to go by Friday"],
  ["No reply needed.", "◆ ."],
  ["Excuse please the delay", "◆"],
  ["The rest is still with the architect", "◆"],
  ["◇ are still with the clinic", "◆"],
  ["The bar's name is still with the architect", "The bar's name is still with the architect"],
  ["No need to write back.", "◆ ."],
  ["no need to reply until Friday", "no need to reply until Friday"],
  ["Looking forward to seeing them up on the wall!", "◆ !"],
  ["The last ones you made for us looked great on the wall.", "◆ ."],
  ["The last ones looked great, same again.", "The last ones looked great, same again."],
  ["Would have sent it yesterday but the internet on site was down.", "◆ ."],
  ["Would have sent it but the truck needs plates", "Would have sent it but the truck needs plates"],
])("“%s” is “%s” without its courtesies", (words, left) => {
  expect(withoutCourtesies(words).replaceAll(/\s+/g, " ")).toBe(left);
});

test.each([
  ["I wonder could you confirm receipt?", "I wonder could you ◆ ?"],
  ["In room 14 the light is red", "In room 14 the light is red"],
  ["Seats in 4 theatres", "Seats in 4 theatres"],
])("of “%s” all that asks for something stays: “%s”", (words, left) => {
  expect(withoutCourtesies(words).replaceAll(/\s+/g, " ")).toBe(left);
});

describe("a greeting is left out where it greets somebody", () => {
  const tale = "it is red and blue and green";
  test.each(["Hi Dana,", "Hi team,", "Hello Dana and Bob,", "Hi Ann Bob Cid Dan Eve Fay,", "  Hi Dana,"])(
    "%s",
    (greeting) => {
      expect(withoutCourtesies(`${greeting} ${tale}`)).toBe(tale);
    },
  );
  test.each([
    "Hello hall,",
    "Hello ordinary,",
    "Hi Stop,",
    "Hello iMac,",
    "Hello Unit4,",
    "Hi Ann Bob Cid Dan Eve Fay Gus,",
  ])("%s stays", (greeting) => {
    expect(withoutCourtesies(`${greeting} ${tale}`)).toBe(`${greeting} ${tale}`);
  });
  test("of a line that only greets nothing is left", () => {
    expect(withoutCourtesies("Hi Dana!")).toBe("");
  });
});
