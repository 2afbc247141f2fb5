import { sampleOf } from "../../src/checks/sample.ts";
import { catalogue } from "./config.ts";

/** The sample sheets of the trade's catalogue. */
export const { device, aloneDevice, plate, deviceAt, completeOrder, blankDevice, blankPlate } =
  sampleOf(catalogue);
