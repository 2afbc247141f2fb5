/** Who manages orders for the desk. */
export interface Manager {
  readonly name: string;
  /** In small letters. */
  readonly address: string;
}

/** Which orders somebody manages, and what that comes to. An order has to fit all that is named. */
export interface Managing {
  /** The project, as the settings name it. */
  readonly project?: string;
  /** The buyer: an address, or a domain. */
  readonly buyer?: string;
  /** Orders of more stations than this. */
  readonly stationsAbove?: number;
  readonly manager: Manager;
  /** They do not pass without the manager's word. Otherwise the manager gets copies of their answers. */
  readonly waits: boolean;
  /** When a week ends of which the manager is told, where the desk is. */
  readonly summary?: { readonly weekday: Weekday; readonly hour: number };
}

export const weekdays = [
  "sunday",
  "monday",
  "tuesday",
  "wednesday",
  "thursday",
  "friday",
  "saturday",
] as const;

export type Weekday = (typeof weekdays)[number];
