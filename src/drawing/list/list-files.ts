/** The names of the empty station list. */
export const listFiles = { workbook: "station-list.xlsx", csv: "station-list.csv" } as const;
