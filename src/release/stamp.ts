/** A moment to read, the same wherever it is written: "2026-11-09 15:00 UTC". */
export function stampOf(moment: Date): string {
  return `${moment.toISOString().slice(0, 16).replace("T", " ")} UTC`;
}
