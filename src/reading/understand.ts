import type { Place } from "../trade/place.ts";
import type { Unread } from "../trade/sheet.ts";
import { type Filled, same, saysYes } from "./filled.ts";

/** What can be chosen at a place: how the trade codes it, and what people call it. */
export type Choices = readonly { readonly code: string; readonly name: string }[];

/** Turns what is filled in into what a place wants, and keeps a list of what made no sense there. */
export interface Understanding {
  readonly unread: readonly Unread[];
  /** Trimmed; undefined when empty. */
  readonly text: (place: Place) => string | undefined;
  /** A whole number; undefined when empty or unread. */
  readonly number: (place: Place) => number | undefined;
  /** A position, and the gangs of its plate where both are written together: "3 of 6". */
  readonly position: (place: Place) => { readonly position?: number; readonly gangs?: number };
  /** The one code chosen. What is not among the choices is unread, or kept as typed. */
  readonly choice: (place: Place, choices: Choices, stranger: "unread" | "kept") => string | undefined;
  /** Every code chosen. */
  readonly choices: (place: Place, choices: Choices, stranger: "unread" | "kept") => readonly string[];
  /** Whether a box is marked. */
  readonly marked: (place: Place) => boolean;
}

export function understand(filled: Filled): Understanding {
  const unread: Unread[] = [];
  const text = (place: Place): string | undefined => {
    const typed = filled.at(place).map((entry) => entry.typed);
    return typed.join(", ").trim() || undefined;
  };
  const refuse = (place: Place, wants: string): void => {
    unread.push({ place, typed: text(place) ?? "", wants });
  };
  const choices: Understanding["choices"] = (place, known, stranger) => {
    const codes = filled.at(place).map(({ means }) => {
      const choice = known.find(({ code, name }) => same(code, means) || same(name, means));
      return choice?.code ?? (stranger === "kept" ? means.trim() : undefined);
    });
    if (codes.includes(undefined)) refuse(place, listed(known.map(({ name }) => name)));
    return [...new Set(codes.filter((code) => code !== undefined))];
  };
  return {
    unread,
    text,
    number: (place) => {
      const typed = text(place);
      const digits = /^(\d{1,3})(?:[\s-]*gangs?)?$/i.exec(typed ?? "")?.[1];
      if (typed !== undefined && digits === undefined) refuse(place, "a number such as 4");
      return digits === undefined ? undefined : Number(digits);
    },
    position: (place) => {
      const typed = text(place);
      const [, position, gangs] = /^(\d{1,3})(?:\s*(?:of|\/)\s*(\d{1,3}))?$/i.exec(typed ?? "") ?? [];
      if (typed !== undefined && position === undefined) refuse(place, "a number such as 2, or 2 of 4");
      return {
        ...(position === undefined ? {} : { position: Number(position) }),
        ...(gangs === undefined ? {} : { gangs: Number(gangs) }),
      };
    },
    choice: (place, known, stranger) => {
      const [code, ...more] = choices(place, known, stranger);
      if (more.length === 0) return code;
      refuse(place, "one choice only");
      return undefined;
    },
    choices,
    marked: (place) => filled.at(place).some(({ means }) => saysYes(means)),
  };
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} or ${names.at(-1)}`;
}
