import { orderNumberNearMiss } from "../checks/order/order-number-near-miss.ts";
import { ageOf } from "../orders/age.ts";
import { plainText } from "../orders/keys.ts";
import { nearProjects } from "../orders/near.ts";
import type { Sheet } from "../trade/sheet.ts";
import { type BuyerState, orderKey } from "./state.ts";

/**
 * What else of its buyer's may belong to an order, in sentences; while it is open, what the order has may be the old.
 * Another order is asked whether this one is meant, or a sheet without an order number came later for one of its places.
 */
export function mayBelongTo(number: string, { orders, arrivals }: BuyerState): string[] {
  const key = orderKey(number);
  const own = orders.find((order) => orderKey(order.number) === key);
  const asked = orders.flatMap((order) => {
    const isAsked = order.questions.some(
      ({ state, problem: { check, facts } }) =>
        state === "open" && check === orderNumberNearMiss.id && orderKey(String(facts["other"])) === key,
    );
    return isAsked ? [`order ${order.number} is asked whether it is meant for this one`] : [];
  });
  const unnumbered = orders.find((order) => orderKey(order.number) === "")?.sheets ?? [];
  const later = unnumbered.filter((sheet) =>
    own?.sheets.some((old) => isAtPlaceOf(sheet, old) && ageOf(sheet.id, old.id, arrivals) !== "older"),
  );
  return [
    ...asked,
    ...later.map(
      ({ id, file }) => `${file} came later without an order number (sheet ${id}) and may be for it`,
    ),
  ];
}

/** Whether a sheet may be for the place of another. What it leaves out says nothing against it. */
function isAtPlaceOf(sheet: Sheet, other: Sheet): boolean {
  const [one, two] = [sheet, other].map((a) => (a.kind === "device" ? a.position : undefined));
  const [project, known] = [sheet.project ?? "", other.project ?? ""];
  return (
    sheet.kind === other.kind &&
    plainText(sheet.mark ?? "") !== "" &&
    plainText(sheet.mark ?? "") === plainText(other.mark ?? "") &&
    (one === undefined || two === undefined || one === two) &&
    (plainText(project) === "" || plainText(project) === plainText(known) || nearProjects(project, known))
  );
}
