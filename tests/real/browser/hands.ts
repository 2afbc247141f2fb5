import type { Page } from "playwright-core";
import { expect } from "vitest";

/** What the top of each page says, and nothing else does. */
export const top = "Sign out";

/** What somebody does on a page, whatever he does it with. `near` is what its ticket, or else its section, says. */
export interface Hand {
  readonly page: Page;
  /** Follows a link, presses a button or opens what is folded; ends when what it leads to is there. */
  readonly go: (name: string | RegExp, near?: string) => Promise<void>;
  /** Types into the field with this label. */
  readonly fill: (label: RegExp, words: string, near?: string) => Promise<void>;
  /** Keys pressed so far, but for those that type words. */
  readonly presses: () => number;
}

const whole = (words: string): RegExp => new RegExp(`^\\s*${RegExp.escape(words)}\\s*$`);

export function byMouse(page: Page): Hand {
  const within = (near?: string) =>
    near === undefined
      ? page.locator("body")
      : page.locator("li.ticket, section, header", { hasText: near }).first();
  return {
    page,
    presses: () => 0,
    async go(name, near) {
      const place = within(near);
      const shown = place
        .getByRole("link", { name, exact: true })
        .or(place.getByRole("button", { name, exact: true }))
        .or(place.locator("summary", { hasText: typeof name === "string" ? whole(name) : name }));
      await shown.first().click();
      await page.waitForLoadState();
    },
    async fill(label, words, near) {
      await within(near).getByLabel(label).first().fill(words);
    },
  };
}

/** Where the focus is. */
export interface Stop {
  readonly tag: string;
  /** What it is called: its words, or its label. */
  readonly name: string;
  readonly near: string;
  readonly inMain: boolean;
  readonly inTicket: boolean;
  /** Pixels of its ring, the ring's colour, and what it lies on. */
  readonly ring: { readonly px: number; readonly colour: string; readonly ground: string };
  /** A part of it lies in the window, and nothing over it. */
  readonly isSeen: boolean;
}

const isSettled = `document.querySelector("[autofocus]") === null || document.activeElement !== document.body`;

const stopNow = `(() => {
  const at = document.activeElement;
  const place = at.closest("li.ticket, section, header");
  const style = getComputedStyle(at);
  let under = at.parentElement;
  while (under !== null && getComputedStyle(under).backgroundColor === "rgba(0, 0, 0, 0)") under = under.parentElement;
  const { left, top, width, height } = at.getBoundingClientRect();
  const seen = document.elementFromPoint(left + Math.min(width / 2, 20), top + Math.min(height / 2, 10));
  return {
    tag: at.tagName,
    name: (at.labels?.[0]?.textContent ?? at.textContent).trim(),
    near: place?.textContent ?? "",
    inMain: at.closest("main") !== null,
    inTicket: at.closest(".tickets > li") !== null,
    ring: {
      px: style.outlineStyle === "none" ? 0 : parseFloat(style.outlineWidth),
      colour: style.outlineColor,
      ground: getComputedStyle(under ?? document.body).backgroundColor,
    },
    isSeen: seen !== null && (at.contains(seen) || seen.contains(at)),
  };
})()`;

export function stopOf(page: Page): Promise<Stop> {
  return page.evaluate<Stop>(stopNow);
}

/**
 * Nothing but keys: Tab, Enter and, where the page helps, arrows from ticket to ticket. It goes as somebody would who
 * knows the page: over the top of it, or back to it, if what he wants is there. `onStop` is told of each place that has had the focus.
 */
export function byKeys(
  page: Page,
  { hasScripts, onStop }: { readonly hasScripts: boolean; readonly onStop: (stop: Stop) => void },
): Hand {
  let presses = 0;
  const press = async (key: string): Promise<Stop> => {
    await page.keyboard.press(key);
    presses += 1;
    const stop = await stopOf(page);
    onStop(stop);
    return stop;
  };
  const reach = async (isWanted: (stop: Stop) => boolean, near: string): Promise<void> => {
    let stop = await stopOf(page);
    const goesBack = near === top && stop.inMain;
    for (let i = 0; i < 200; i++) {
      if (isWanted(stop) && stop.near.includes(near)) return;
      const isSkip = stop.name === "To the content";
      const isElsewhere = near !== "" && stop.inTicket && !stop.near.includes(near);
      if (goesBack) stop = await press("Shift+Tab");
      else if (isSkip && near !== top) stop = await press("Enter");
      else if (isElsewhere && hasScripts && !["INPUT", "TEXTAREA", "SELECT"].includes(stop.tag))
        stop = await press("ArrowDown");
      else stop = await press("Tab");
    }
    throw new Error(`nothing of the kind is reached by keys near “${near}”: last was “${stop.name}”`);
  };
  return {
    page,
    presses: () => presses,
    async go(name, near = "") {
      const isNamed = (stop: Stop): boolean =>
        typeof name === "string" ? stop.name === name : name.test(stop.name);
      await reach((stop) => ["A", "BUTTON", "SUMMARY"].includes(stop.tag) && isNamed(stop), near);
      const isFold = (await stopOf(page)).tag === "SUMMARY";
      const left = isFold ? undefined : page.waitForEvent("framenavigated");
      await page.keyboard.press("Enter");
      presses += 1;
      await left;
      await page.waitForLoadState();
      // What asks for the focus gets it when the page is first drawn.
      await expect.poll(() => page.evaluate<boolean>(isSettled)).toBe(true);
    },
    async fill(label, words, near = "") {
      await reach(
        (stop) => ["INPUT", "TEXTAREA", "SELECT"].includes(stop.tag) && label.test(stop.name),
        near,
      );
      await page.keyboard.type(words);
    },
  };
}
