import type { DeviceSheet } from "../trade/sheet.ts";

/** Whether a device goes into a multi-gang plate. If the sheet does not say so, position and gangs tell. */
export function goesIntoPlate({ standing, position, gangs }: DeviceSheet): boolean {
  if (standing !== undefined) return standing === "in-plate";
  return gangs === undefined ? position !== undefined : gangs > 1;
}
