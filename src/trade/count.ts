/** How many of something there are, as somebody says: "5 four-gang plates". */
export interface Count {
  readonly of: "device" | "plate" | "station" | "sheet" | "file";
  /** The codes of a device's layout, and of a finish. */
  readonly layout?: string;
  readonly finish?: string;
  /** Of a plate. */
  readonly gangs?: number;
  readonly number: number;
}

/** What a count counts. Two counts of the same say the same, or contradict each other. */
export function countedBy({ of, layout = "", finish = "", gangs }: Count): string {
  return [of, layout, gangs ?? "", finish].join(" ").trimEnd();
}
