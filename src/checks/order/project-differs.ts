import { oddOnes, saidOfProject } from "../../orders/differ.ts";
import { nearProjects } from "../../orders/near.ts";
import { at, defineOrderCheck } from "../check.ts";
import { subject } from "../sample.ts";

export const projectDiffers = defineOrderCheck({
  id: "project-differs",
  title: "One order number for two projects",
  severity: "stops",
  waivable: true,
  source: { kind: "common practice" },
  why: "An order goes to one job site. Sheets of another project under its number would be delivered to the wrong building.",
  wordings: {
    differs: {
      says: "The project name is “{typed}” here and “{usual}” on other sheets of this order.",
      fix: "Give each project an order number of its own, or correct the name, and send the sheet again.",
    },
  },
  passing: [
    { shows: "one project", given: ({ completeOrder }) => subject(completeOrder()) },
    {
      shows: "a placeholder, which has a check of its own",
      given: ({ deviceAt, plate }) => subject([plate(), deviceAt(1), deviceAt(2, { project: "TBD" })]),
    },
    {
      shows: "a name with a slip",
      given: ({ deviceAt, plate }) =>
        subject([plate(), deviceAt(1), deviceAt(2, { project: "Larkspur Libary" })]),
    },
  ],
  failing: [
    {
      shows: "a sheet of another building",
      given: ({ deviceAt, plate }) =>
        subject([plate(), deviceAt(1), deviceAt(2, { project: "Quarry Street School" })]),
      wording: "differs",
      says: "The project name is “Quarry Street School” here and “Larkspur Library” on other sheets of this order.",
    },
    {
      shows: "two towers",
      given: ({ deviceAt, plate }) =>
        subject([plate({ project: "Tower 1" }), deviceAt(2, { project: "Tower 2" })]),
      wording: "differs",
      says: "The project name is “Tower 2” here and “Tower 1” on other sheets of this order.",
    },
  ],
  *find({ order }, _, say) {
    for (const { sheets, typed, usual } of oddOnes(order.sheets, saidOfProject))
      if (!nearProjects(typed, usual))
        yield say(
          "differs",
          { typed, usual },
          sheets.flatMap((sheet) => at(sheet, "project")),
        );
  },
});
