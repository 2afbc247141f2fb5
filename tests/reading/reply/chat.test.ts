import { expect, test } from "vitest";
import { onlyChats, withoutStory, withoutTimes } from "../../../src/reading/reply/chat.ts";

test.each([
  ["I was at my desk", true],
  ["our clients are nice", true],
  ["our clients did", false],
  ["The plate for the attic", true],
  ["The plate of brass", false],
  ["Template for the attic", false],
  ["The plateau for the attic", false],
  ["The plate therefor", false],
  ["The plate forever", false],
  ["the gc is tall", true],
  ["like the gc is tall", false],
  ["Lettuce", false],
  ["Took long", true],
  ["Rooms", true],
  // Whoever names a place needs no verb, and says not how many.
  ["Four rooms get this one", false],
  ["All rooms", false],
  ["The last ones yellowed", false],
  // What is told of the sheets may undo them. How they come is a matter of course.
  ["The sheets predate the sale", false],
  ["The attached is our wish list", false],
  ["These forms went through three hands", false],
  ["The second form belongs to the garage job", false],
  ["Forms reflect the plan of June", false],
  ["The forms are sorted", true],
  ["The sheets you asked for", true],
  ["The attached forms are from our office", true],
  ["Attached are the forms", true],
  ["I typed the sheets on my phone", true],
  // That something is so and so may be news.
  ["All are seconds", false],
  ["This is the landlord's taste", false],
  ["It's on a slope", false],
  ["All of it hangs on a loan", false],
  ["Seems the owner sold", false],
  ["It's Dana from the counter", true],
  ["Hello, it's ◈", true],
  ["It's Oak", false],
  ["These are for the new wing", true],
  ["It has been quite a journey", true],
  ["It was good to meet you", true],
  ["It's good enough", false],
  ["It stands alone", true],
  ["It stands in the yard", false],
  // A room, or a station (◇), is not the writer's own affair, however warmly he tells of it.
  ["Sorry, the gym became a spa", false],
  ["Lovely weather, and ◇ is off", false],
  ["The lobby is lovely, thanks", true],
  ["Thanks, the ballroom has its own page", true],
  // What the writer does with what is made is not his own affair.
  ["The stage ones we do by hand", false],
  ["We do these by hand", true],
  ["I squeezed the word", false],
  ["Roomy", false],
  ["the last two", true],
  ["the last two of these that we had to make up", false],
  ["I forgot the two for the attic", false],
  ["X", true],
  ["Xy", false],
  ["the last two of the rooms in that building", true],
  ["the last two of the rooms in that tall building", false],
  ["Great kitchen stairs", true],
  ["Thanks, not bad at all", true],
  ["Thanks, not the plates", false],
  ["Nobody is here", false],
  ["Later today", true],
  ["Later today the plates", false],
  ["I will send them later", true],
  ["Hers come later with those", false],
  ["How is it?", false],
  ["Nice weekend?", true],
])("“%s” only chats: %s", (said, chats) => {
  expect(onlyChats(said, said)).toBe(chats);
});

test("what is understood already may stand beside any word", () => {
  expect(onlyChats("It ◆ Xy", "◆ Xy")).toBe(true);
  expect(onlyChats("It Xy", "Xy")).toBe(false);
});

const words = (said: string): string => said.replaceAll(/\s+/g, " ").trim();

test.each([
  ["We finally agreed on the names, so here they are", "We on the names,"],
  ["We agreed what to put on it, so here you go!", "We it,"],
  ["It finally got released, and here are our sheets.", "It got ,"],
  ["We agreed what to put onto it, so here you go!", "We what to put onto it,"],
  ["We agreed somewhat to put on it, so here you go!", "We somewhat to put on it,"],
  ["The names came at last, agreed on, so here they are", "The names came at last, on,"],
])("of the story “%s” its end settles all but “%s”", (said, left) => {
  expect(words(withoutStory(said, said))).toBe(left);
});

test.each([
  "They agreed on the names, so here they are",
  "We agreed on the names, so here it goes.",
  "We agreed on the names, so here they are; call us",
  "The order is forgotten, approved, so here they are",
])("“%s” is no story that its end settles", (said) => {
  expect(withoutStory(said, said)).toBe(said);
});

test.each([
  ["I worked till 2019", "I worked"],
  ["I was in at noon", "I was in"],
  ["took 12 years", "took years"],
  ["The boy took 2 hours", "The boy took hours"],
  ["We met 3 friendly people", "We met friendly people"],
  ["I was in at noonday", "I was in at noonday"],
  ["I was there at 4-gang", "I was there at 4-gang"],
  ["I was there at 4/5", "I was there at 4/5"],
  ["We met 3 peoples", "We met 3 peoples"],
  ["I had 1234 hours", "I had 1234 hours"],
  ["They mistook 2 hours", "They mistook 2 hours"],
  ["Enjoy lunch at noon", "Enjoy lunch"],
  ["She leaves at noon", "She leaves at noon"],
  ["We took 2 hours for the plates", "We took 2 hours for the plates"],
])("without hours and years “%s” is “%s”", (said, left) => {
  expect(words(withoutTimes(said))).toBe(left);
});

test("a word that begins as “had” does is not what its writer had", () => {
  expect(onlyChats("Had rain all day.", "Had rain all day.")).toBe(true);
  expect(onlyChats("Hadrian drew it.", "Hadrian drew it.")).toBe(false);
});

test.each([
  ["◇ and ◇ at the ◈", true],
  ["◇ for Larkspur", true],
  ["○ devices, all of them for ◇", true],
  ["You can reach me at ◈ or ◈", true],
  ["◈ is out", false],
  ["◈ is gone", false],
  ["◇ became a closet", false],
  ["for Larkspur", false],
])("what names only what is known says nothing: %s: %s", (rest, names) => {
  expect(onlyChats("Xy", rest)).toBe(names);
});

test.each([
  ["Our planning drags on", true],
  ["Our plans drag on", false],
  ["Somehow the gc is tall", false],
  ["Bob could review Xy", false],
  ["Bob lives here alone", false],
  ["Xy ○", true],
  ["Sorry about the attic mess", true],
  ["The browser crashed", true],
  ["Sorry, not them", false],
  ["Thanks, Xy by △", false],
])("of its writer, or not, “%s” only chats: %s", (said, chats) => {
  expect(onlyChats(said, said)).toBe(chats);
});

test("beside a telephone number words that ask for nothing say nothing", () => {
  expect(onlyChats("Xy", "Xy", true)).toBe(true);
  expect(onlyChats("Not Xy", "Not Xy", true)).toBe(false);
});

test.each([
  ["We disagreed on it, so here they are", "We disagreed on it,"],
  ["We made an agreement, so here they are", "We made an agreement,"],
  ["Bob forgot, approved, so here they are", "Bob forgot, approved, so here they are"],
  ["Gotham approved it, so here they are", "Gotham approved it, so here they are"],
])("words that only sound like the end of a story stay: %s", (said, left) => {
  expect(words(withoutStory(said, said))).toBe(left);
});

test("a story ends in twenty characters", () => {
  const told = "We finally agreed, so here they are";
  expect(words(withoutStory(told, `${told} ${"x".repeat(19)}`))).not.toContain("here");
  expect(words(withoutStory(told, `${told} ${"x".repeat(20)}`))).toContain("here");
});
