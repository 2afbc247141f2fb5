import { expect, test } from "vitest";
import {
  asksFor,
  bids,
  hasLegend,
  namesGoods,
  speaksOfMaking,
  speaksOfTrade,
  turnsIn,
} from "../../../src/reading/reply/cues.ts";

// △ stands for a day.
test.each([
  ["Was it △?", "asks"],
  ["by the △", "limits"],
  ["ready before next △", "limits"],
  ["it is here △", "limits"],
  ["standby △", "nothing"],
  ["cohere △", "nothing"],
  ["by early march", "limits"],
  ["in spring", "limits"],
  ["nearby march", "nothing"],
  ["in springs", "nothing"],
  ["in the new yearbook", "nothing"],
])("%s: it %s", (said, turns) => {
  expect(turnsIn(said)).toBe(turns);
});

test.each([
  ["This is not final", true],
  ["It is not finally here", false],
  ["not yet", true],
  ["not yeti", false],
  ["knot final", false],
  ["We will see.", true],
  ["we'll see what", true],
  ["we'll see whatnot", false],
  ["we will seed", false],
  ["not an order", true],
  ["not an orderly", false],
  ["an order", false],
  ["Please make", true],
  ["Appease make", false],
  ["Please add me", false],
  ["please call before you start", true],
  ["please call beforehand", false],
  ["Send it", true],
  ["and make it", true],
  ["brand make it", false],
  ["Deduct the two", true],
  ["Deducted the two", false],
  ["The left one in front please", true],
  ["pleased with the left one", false],
])("“%s” bids somebody to do something: %s", (said, bidden) => {
  expect(bids(said)).toBe(bidden);
});

test.each([
  ["cut", true],
  ["cutlery", false],
  ["haircut", false],
  ["ship by truck", true],
  ["shipping by truck", false],
  ["devices", true],
  ["mobile devices", false],
  ["handheld device", false],
  ["templates", false],
  ["plateau", false],
  ["hundred", false],
  ["redo", false],
])("“%s” is of the trade: %s", (said, isOfTrade) => {
  expect(speaksOfTrade(said)).toBe(isOfTrade);
});

test("beside papers “them” are papers, and a plate is goods beside anything", () => {
  expect(namesGoods("I lost them")).toBe(true);
  expect(namesGoods("I typed them on my phone")).toBe(false);
  expect(namesGoods("I typed the plate on my phone")).toBe(true);
  expect(namesGoods("I typed it on my phone")).toBe(false);
});

test.each([
  ["Lobby: SA", true],
  ["Lobby: S", false],
  ["A word of twenty-two l: SA", false],
  ["see SALO there", true],
  ["see SAL there", false],
])("“%s” has a legend: %s", (said, has) => {
  expect(hasLegend(said)).toBe(has);
});

test.each([
  // Papers that nobody has attached.
  "See drawing for layout.",
  "Refer to plans.",
  "See contract for details.",
  "Our spec book is on the portal.",
  "The rest is in the file room.",
  "You should have the latest list by now.",
  // What others have promised, and who has it in hand.
  "Arnold said you'd do the first set free.",
  "Sam told us you could match it.",
  "Bob took over this job.",
  "The GC took the lobby from us.",
  "Send questions to Bob from now on.",
  "Greta has left, I am your contact now.",
  "We closed the Fenwick St branch.",
  "Site super is now Wanda Pruett.",
  "Everything runs out of Mill Rd now.",
  "The number you have is some thief's.",
  "They're furnished by owner, installed by us.",
  "Bond company has stepped in for the GC.",
  "We do COD with you these days.",
  // Nobody has decided, or it is there already.
  "Designer is going back and forth.",
  "Think I already faxed these Tuesday.",
  "The lobby one is existing.",
  "B-2 is to remain.",
  "NIC",
  "OFCI",
  // Who is not sure of it himself.
  "Some names are a hunch.",
  "My boy typed it, so who knows.",
  "It was hard to save, hope it kept everything.",
  "The form cut off my last word.",
  "The second one looked short to me.",
  "The second sheet may be moot.",
  "The second sheet was an afterthought.",
  "There's a mock name on one of them.",
  "The gym may go.",
  "Here are my two cents.",
  "Here is what I would do.",
  "That has been called off before.",
  "I misread the plan in two places.",
  "We rearranged the rooms last night.",
  "I borrowed the names from a house I know.",
  "My boss flips a coin on these.",
  "We are three short on the second floor.",
  "We are between offices.",
  "I am new and copied an old one.",
  "I filled these in for a neighbour.",
  "We hope to hear from the city.",
  "Thanks for holding the other four.",
  "Sorry, the terrace is history.",
  "There is a newer printout on site.",
  "The files crossed in the post.",
  "My keyboard sticks on the E.",
  "My reader shows squares for some letters.",
  // What somebody is bid to do begins a sentence.
  "Add metal.",
  "Use oak.",
  "Give me three of them.",
  "I circled the right one.",
  "Phil is sending his half.",
  "The owner's rep hasn't initialed these.",
  // What counts beside the sheets, or more.
  "Drawings rev C is the one to follow.",
  "The sheets were off rev B.",
  "House style applies.",
  "Names per the signage consultant's list.",
  "We'll supply the plates.",
  "It would be lovely if you showed us one.",
  "The letters could stand a little apart.",
  "Our old plates are still fine.",
  "The second file is for you to look at.",
  "Nice and big for the old folks.",
  "Joss has all my files.",
  "The fans got VE'd out.",
  "Level 2 on the outside of the carton would save me a morning.",
  // What holds only if, only nearly, or of a part.
  "Please find attached our order, provided it fits.",
  "Sheets attached, subject to review.",
  "Order attached, assuming it fits.",
  "Order attached, depending on the owner.",
  "Sheets attached, Bob permitting.",
  "Order attached on the understanding that it is free.",
  "Sheets attached, once signed.",
  "Sheets attached, supposedly.",
  "Order attached in principle.",
  "Complete, as far as I know.",
  "Order attached, in part.",
  "Half of it is attached.",
  "Sheets attached, with a few gaps.",
  "Order attached, unsigned.",
  "Oat or equivalent.",
  "Sheets attached for discussion.",
  "Order attached on trial.",
  "Sheets attached for the time being.",
  "Sheets attached, to start with.",
  // What comes or counts with the sheets.
  "Order attached, and the drawings.",
  "Sheets attached, with our remarks.",
  "Sheets attached, with two questions.",
  "Order attached, at your expense.",
  "Sheets attached, in one box.",
  "Sheets attached, in pencil.",
  "Order attached, for Easter.",
  "Order attached, before the opening.",
  "Sheets attached, off an old drawing.",
  "Order attached, as a replacement.",
  "Order attached, alternatively.",
  "Sheets attached, originals to follow.",
  "Sheets attached, one missing.",
  "Sheets attached, names open.",
  // Where it hangs, and what it turns off.
  "It's outdoors.",
  "It is for blind people.",
  "One feeds the exit signs.",
  "That one is on the generator.",
  "Everything left of the stairs moved one over.",
  // The wall, and slips.
  "GC tells me the wall at S-102 comes down.",
  "Tile in the corridor builds out.",
  "Contract is NTE.",
  "Autocorrect got me on one of them.",
  "The last letter got cut off.",
  "It's a wet location.",
  "Text me when ready.",
  // Copies, doubts, names not given yet, from where places are counted, and what the place does to them.
  "They started life as the Birch Lane sheets.",
  "These were the Birch Lane sheets once.",
  "Copied over from Birch Lane.",
  "Cloned from another job.",
  "I took the old sheets and typed over.",
  "Typed over our old ones.",
  "My cat walked over the keyboard at the end.",
  "The kid had the tablet for a while before I hit send.",
  "I dictated the legends.",
  "I wrote down what I heard.",
  "Did these half asleep.",
  "Blame any slip on the flu.",
  "Excuse slips, I have the flu.",
  "Something is off on one of them.",
  "One of these looks odd to me.",
  "One looked odd.",
  "May have missed one.",
  "I keep thinking I forgot something.",
  "Feels like I forgot something.",
  "Tell me if it makes sense.",
  "Our usual.",
  "As always, the small letters.",
  "We await the blessing of the board.",
  "If Friday goes well we build.",
  "We are one of three.",
  "We hope to win it.",
  "Fingers crossed we get it.",
  "I call you with the go.",
  "I give you the word.",
  "I get back to you on this.",
  "Reading from the left as you stand in the hall.",
  "Seen from inside the room.",
  "Counted from the window.",
  "From door to window.",
  "Door side first.",
  "Order is clockwise.",
  "Clockwise from the door.",
  "Any order will do.",
  "Kid proof.",
  "Vandal proof if there is such a thing.",
  "It is for a boat, salt air.",
  "Salt air here.",
  "It gets wet there.",
  "Behind the bar, gets splashed.",
  "For our app.",
  "Works with our app?",
  "On site they number them the other way.",
  "Our numbers start at two.",
  "We gave S-102 to the other crew.",
  "Card on file.",
  "We have a new account.",
  "New bank.",
  "We owe you from last time.",
  "Eight is my limit.",
  "Eight hundred is my limit.",
  "Top quality, it is for the mayor.",
  "Waiting for names on two rooms.",
  "Everything bar the lobby.",
  "Waiting for the names of two rooms.",
  "Two names outstanding.",
  "Two names still to come from the client.",
  "One name missing.",
  "Two words are still open.",
])("“%s” is for a person", (said) => {
  expect(speaksOfMaking(said)).toBe(true);
});

test.each([
  "See the attached drawings.",
  "I took over this job from Marcus.",
  "Wall stations for the library.",
  "Wall Street",
  "The new build-out on Route 9.",
  "The legend was cut off when I pasted it.",
  "It would be great to get these going.",
  "I am an outdoors person.",
  "She writes from the old place.",
  "I hope it finds you well.",
  "Per your list.",
  "Thanks for holding my hand through this.",
  "Hoping to hear from you.",
  "Add me to your mail.",
  "Give me a call.",
  "The sheets that you provided.",
  "Almost done here.",
  "New sheet attached with the corrections.",
  "With our best wishes for Easter.",
  "Assuming you are well.",
  "From the new list.",
  "Nic says hello.",
  "Here they are now.",
  "I'm all set now.",
])("“%s” is not, of its words", (said) => {
  expect(speaksOfMaking(said)).toBe(false);
});

test.each([
  ["Check against the drawing", true],
  ["please check it carefully against our plan", true],
  ["Sheets are here; compare with the attached reflected schedule", true],
  ["you verify to the list", true],
  ["Double-check the legends against what we sent", true],
  ["Check the drawing.", true],
  ["please look at our reflected plans for the heights", true],
  ["I had to check against the drawing", false],
  ["we checked the drawing", false],
  ["the drawing", false],
  ["we checked with the owner", false],
  ["Check with the owner", false],
  ["Please check", false],
  ["crosscheckers against the odds", false],
])("%s: it bids to compare: %s", (said, is) => {
  expect(bids(said)).toBe(is);
});

test.each([
  ["The letters often fade", true],
  ["I typed the lettering on my phone", true],
])("“%s” names goods: %s", (said, names) => {
  expect(namesGoods(said)).toBe(names);
});

test.each([
  ["Notes are complete", false],
  ["It is not incomplete", false],
  ["Levi will see.", false],
  ["We'll see Howard", false],
  ["We will see Iffley", false],
  [`not ${"x".repeat(38)} final`, true],
  [`not ${"x".repeat(39)} final`, false],
  [`treat ${"x".repeat(20)} as one`, true],
  [`treat ${"x".repeat(21)} as one`, false],
  ["Inset the two", true],
  ["Blast items", false],
  ["A brand match against the list", false],
  ["Check the drawing", true],
  ["Check the drawing board", false],
  ["He spoke unkindly before", false],
  ["We are pleased, not sad", false],
  [`please call me ${"x".repeat(50)} before`, true],
  [`please call me ${"x".repeat(51)} before`, false],
  ["Please find the piano", false],
])("in so many words, or in others like them, “%s” bids: %s", (said, bidden) => {
  expect(bids(said)).toBe(bidden);
});

test.each([
  [`“${"x".repeat(40)}” here`, true],
  [`“${"x".repeat(41)}” here`, false],
  [`'${"x".repeat(40)}' here`, true],
  [`'${"x".repeat(41)}' here`, false],
  ["A => B", true],
  ["Please widen it", true],
  ["Please call before lunch", true],
  ["The left one in front please", true],
  ["Make pizza", true],
  ["Hem the two", true],
  ["Check against the plan", true],
  ["We will see.", true],
])("“%s” is for a person wherever it stands: %s", (said, is) => {
  expect(speaksOfMaking(said)).toBe(is);
});

test.each([
  ["It is not here", "binds"],
  ["It is here also", "hints"],
  ["A nice day", "nothing"],
])("“%s” turns it: %s", (said, turns) => {
  expect(turnsIn(said)).toBe(turns);
});

test.each([
  ["A nice day", false],
  ["Please widen it", true],
  ["Is it here?", true],
  ["It is here also", true],
  ["They swapped seats", true],
  ["He is held", true],
])("“%s” may ask for something: %s", (said, asks) => {
  expect(asksFor(said)).toBe(asks);
});

test.each([
  [`${"x".repeat(21)}: SA`, true],
  [`${"x".repeat(22)}: SA`, false],
  ["see theSALO there", false],
  ["see SALOn there", false],
  ["SALO THERE", false],
])("beside other words “%s” has a legend: %s", (said, has) => {
  expect(hasLegend(said)).toBe(has);
});
