import type { SheetValues } from "../../src/drawing/fill-sheet.ts";

const common = {
  contact_name: "Ines Calloway",
  contact_email: "ines@brightwire.example",
  contact_phone: "312-555-0117",
  project: "Larkspur Library",
  order_number: "BW-2207",
  station_mark: "S-104",
  bill_name: "Brightwire Electric",
  bill_street: "48 Foundry Row",
  bill_city: "Chicago",
  bill_state: "IL",
  bill_postcode: "60607",
  ship_same: true,
  finish: "Oat",
  lettering: "Ink",
} as const;

/** A device sheet filled as a buyer would. */
export const deviceValues: SheetValues = {
  ...common,
  standing: "in-plate",
  position: "2",
  gangs: "4",
  layout: "D4",
  button1_row1: "ENTRY",
  button2_row1: "STACKS",
  button2_row2: "EAST",
  button3_plain: true,
  button4_row1: "ALL",
  button4_row2: "OFF",
  notes: "Doors open at 7 a.m.\nRing twice.",
};

/** The plate sheet that goes with it. */
export const plateValues: SheetValues = {
  ...common,
  gangs: "4",
  gang1_row1: "FOYER",
  gang2_row1: "READING",
  gang2_row2: "ROOM",
  gang3_plain: true,
  gang4_row1: "CONFERENCE R",
};
