import { expect } from "vitest";
import { visitor } from "./browser.ts";
import { type Hand, stopOf, top } from "./hands.ts";

/** What came of an act is told, and has the focus. */
async function told(hand: Hand, words: string): Promise<void> {
  await expect.poll(() => hand.page.locator(".said").textContent()).toContain(words);
  await expect.poll(async () => (await stopOf(hand.page)).name).toContain(words);
}
const titled = (hand: Hand, title: string | RegExp) =>
  expect.poll(() => hand.page.locator("h1").textContent()).toMatch(title);

async function find(hand: Hand, words: string): Promise<void> {
  await hand.go("Orders", top);
  await hand.fill(/^Order, project/, words);
  await hand.go("Search");
  await expect.poll(() => hand.page.locator("h2").first().textContent()).toBe("Found");
}

/** A clerk's work on the demonstration's record, case by case, from signing in to signing out. */
export const triage: readonly (readonly [what: string, work: (hand: Hand) => Promise<void>])[] = [
  [
    "sign in",
    async (hand) => {
      await hand.fill(/^User$/, visitor.user);
      await hand.fill(/^Password$/, visitor.password);
      await hand.go("Sign in");
      await titled(hand, "Today");
    },
  ],
  [
    "read the first that waits",
    async (hand) => {
      await hand.go(/./, "KE-83");
      await titled(hand, "Order KE-83");
    },
  ],
  [
    "settle a question with YES",
    async (hand) => {
      await hand.go("People", top);
      await hand.fill(/^Reason/, "Marta said so on the telephone", "Order FW-1184");
      await hand.go("It is meant so", "Order FW-1184");
      await told(hand, "Order FW-1184: pass");
    },
  ],
  [
    "release the order that passes by it",
    async (hand) => {
      await hand.go("Release to engraving");
      await told(hand, "Released:");
    },
  ],
  [
    "record it cut",
    async (hand) => {
      await hand.go("It is engraved");
      await told(hand, "Order FW-1184 is engraved");
    },
  ],
  [
    "let a held letter in",
    async (hand) => {
      await hand.go("What waits next");
      await hand.fill(/^Why it is genuine/, "called back", "Letter 37");
      await hand.go("Let it in", "Letter 37");
      await told(hand, "Let in as letter");
    },
  ],
  [
    "put a letter aside",
    async (hand) => {
      await hand.go("What waits next");
      await hand.fill(/^What was done/, "black on black is meant", "Order VI-88");
      await hand.go("It is dealt with", "Order VI-88");
      await told(hand, "Order VI-88");
    },
  ],
  [
    "find an order by its number",
    async (hand) => {
      await find(hand, "WX-31");
      await hand.go("WX-31");
      await titled(hand, "Order WX-31");
    },
  ],
  [
    "let stand its second fault",
    async (hand) => {
      await hand.fill(/^Reason.* 2$/, "we have the number on file");
      await hand.go("Let it stand", "is not a number that can be called");
      await told(hand, "Order WX-31");
    },
  ],
  [
    "write to a sender",
    async (hand) => {
      await hand.go(/^Write to the sender, or/);
      await hand.fill(/^Your words/, "We have put your telephone number right.");
      await hand.go("Send");
      await told(hand, "Order WX-31");
    },
  ],
  [
    "look at the day",
    async (hand) => {
      await hand.go("Day", top);
      await titled(hand, /^Day/);
    },
  ],
  [
    "look at a check",
    async (hand) => {
      await hand.go("Checks", top);
      await titled(hand, "Checks");
      await hand.go("saved-blank");
      await titled(hand, "A sheet that was saved empty");
    },
  ],
  [
    "find an order by its telephone",
    async (hand) => {
      await find(hand, "312-555-0102");
      await hand.go("OG-5526");
      await titled(hand, "Order OG-5526");
    },
  ],
  [
    "find an order by a legend",
    async (hand) => {
      await find(hand, "sterilizing");
      await hand.go("WX-31");
      await titled(hand, "Order WX-31");
    },
  ],
  [
    "sign out",
    async (hand) => {
      await hand.go("Sign out", top);
      await titled(hand, "Sign in");
    },
  ],
];
