import { oddOnes, saidOfProject } from "../../orders/differ.ts";
import { nearProjects } from "../../orders/near.ts";
import { at, defineOrderCheck } from "../check.ts";
import { subject } from "../sample.ts";

export const projectNearMiss = defineOrderCheck({
  id: "project-near-miss",
  title: "A project name looks mistyped",
  severity: "asks",
  source: { kind: "house" },
  why: "The project name is printed on the crate. One name with a slip is more likely than two projects in one order, but only the buyer knows.",
  wordings: {
    near: {
      says: "The project name is “{typed}” here and “{usual}” on other sheets of this order.",
      fix: "Did you mean “{usual}”? Confirm the right name.",
    },
  },
  passing: [
    { shows: "one name throughout", given: ({ completeOrder }) => subject(completeOrder()) },
    {
      shows: "another case, a hyphen",
      given: ({ deviceAt, plate }) =>
        subject([plate(), deviceAt(1), deviceAt(2, { project: "LARKSPUR-LIBRARY" })]),
    },
    {
      shows: "two towers",
      given: ({ deviceAt, plate }) =>
        subject([plate({ project: "Tower 1" }), deviceAt(2, { project: "Tower 2" })]),
    },
  ],
  failing: [
    {
      shows: "a letter left out",
      given: ({ deviceAt, plate }) =>
        subject([plate(), deviceAt(1), deviceAt(2, { project: "Larkspur Libary" })]),
      wording: "near",
      says: "The project name is “Larkspur Libary” here and “Larkspur Library” on other sheets of this order.",
      fix: "Did you mean “Larkspur Library”? Confirm the right name.",
    },
  ],
  *find({ order }, _, say) {
    for (const { sheets, typed, usual } of oddOnes(order.sheets, saidOfProject))
      if (nearProjects(typed, usual))
        yield say(
          "near",
          { typed, usual },
          sheets.flatMap((sheet) => at(sheet, "project")),
        );
  },
});
