import type { Place } from "../trade/place.ts";
import type { Unread } from "../trade/sheet.ts";
import { type Choices, choiceOf, type Stranger } from "./choices.ts";
import { type Filled, saysYes } from "./filled.ts";

/** Turns entries into what a place wants, and lists what made no sense there. */
export interface Understanding {
  readonly unread: readonly Unread[];
  /** Trimmed; undefined when empty. */
  readonly text: (place: Place) => string | undefined;
  /** A whole number; undefined when empty or unread. */
  readonly number: (place: Place) => number | undefined;
  /** A position, with or without the gangs of its plate: "3 of 6". */
  readonly position: (place: Place) => number | undefined;
  /** The gangs that are written beside a position. */
  readonly gangsBeside: (place: Place) => number | undefined;
  /** The one code chosen. A value that is no choice is unread, or kept as typed. */
  readonly choice: (place: Place, choices: Choices, stranger: Stranger) => string | undefined;
  /** Every code chosen. */
  readonly choices: (place: Place, choices: Choices, stranger: Stranger) => readonly string[];
  /** Whether a box is marked. */
  readonly marked: (place: Place) => boolean;
}

export function understand(filled: Filled): Understanding {
  const unread: Unread[] = [];
  const text = (place: Place): string | undefined => {
    const typed = filled.at(place).map((entry) => entry.typed);
    return typed.join(", ").trim() || undefined;
  };
  const meaning = (place: Place): string =>
    filled
      .at(place)
      .map(({ means }) => means)
      .join(", ")
      .trim();
  const positionIn = (place: Place) => positionWords.exec(meaning(place))?.groups ?? {};
  const refuse = (place: Place, wants: string): void => {
    unread.push({ place, typed: text(place) ?? "", wants });
  };
  const choices: Understanding["choices"] = (place, known, stranger) => {
    const codes = filled.at(place).map(({ means }) => {
      return choiceOf(means, known)?.code ?? (stranger === "kept" ? means.trim() : undefined);
    });
    if (codes.includes(undefined)) refuse(place, listed(known.map(({ name }) => name)));
    return [...new Set(codes.filter((code) => code !== undefined))];
  };
  return {
    unread,
    text,
    number: (place) => {
      const means = meaning(place);
      const digits = /^(\d{1,3})(?:[\s-]*g(?:angs?)?)?$/i.exec(means)?.[1];
      if (means !== "" && digits === undefined) refuse(place, "a number such as 4");
      return digits === undefined ? undefined : Number(digits);
    },
    position: (place) => {
      const { position } = positionIn(place);
      if (position === undefined && meaning(place) !== "") refuse(place, "a number such as 2, or 2 of 4");
      return position === undefined ? undefined : Number(position);
    },
    gangsBeside: (place) => {
      const { gangs } = positionIn(place);
      return gangs === undefined ? undefined : Number(gangs);
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

/** "2", "2 of 4", "2/4", "#2", "Pos. 2". */
export const positionWords =
  /^(?:#|(?:pos(?:ition)?|no)\b\.?)?\s*(?<position>\d{1,3})(?:\s*(?:of|\/)\s*(?<gangs>\d{1,3}))?$/i;

function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} or ${names.at(-1)}`;
}
