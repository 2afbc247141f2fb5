import type { OrderReport, Report } from "../judging/report.ts";
import { sheetsOf } from "../judging/sheets-of.ts";
import { type Problem, type Verdict, verdictOf } from "../trade/problem.ts";
import { oneLine } from "./one-line.ts";
import { numberOf } from "./phrases.ts";
import type { Filed } from "./told.ts";

/** What one chapter of an answer is about. Its problems have no order yet. */
export interface Topic {
  /** "Order BW-2207"; heads the problems of more than one sheet. */
  readonly name: string;
  /** The name with the project. */
  readonly title: string;
  readonly verdict: Verdict;
  readonly filed: readonly Filed[];
  readonly order?: OrderReport;
}

/**
 * The topics of an answer. A single order takes in the whole letter. Several have a topic each, and one more holds
 * what is about none of them.
 */
export function topicsOf(report: Report): Topic[] {
  const letter = "This letter";
  const loose = fileUnder(letter, [...report.files.flatMap(({ problems }) => problems), ...report.problems]);
  const orders = report.orders.map((order) => orderTopic(order, report));
  const [only, ...more] = orders;
  if (only !== undefined && more.length === 0)
    return [{ ...only, verdict: report.verdict, filed: [...loose, ...only.filed] }];
  if (loose.length === 0) return orders;
  const verdict = verdictOf(loose.map(({ problem }) => problem));
  const about = { name: letter, title: letter, verdict, filed: loose };
  return verdict === "pass" ? [...orders, about] : [about, ...orders];
}

function orderTopic(order: OrderReport, report: Report): Topic {
  const { project } = order.order;
  const number = numberOf(order.order);
  const aside = new Set(order.order.aside.map(({ sheet }) => sheet.id));
  const ids = new Set(sheetsOf(order.order).map(({ id }) => id));
  // It is only asked whether a sheet kept aside counts.
  const sheets = report.sheets.filter(({ sheet }) => ids.has(sheet.id) && !aside.has(sheet.id));
  const name = number === undefined ? "Order without a number" : `Order ${number}`;
  return {
    name,
    title: project === undefined ? name : `${name}, ${oneLine(project, 80)}`,
    verdict: order.verdict,
    filed: fileUnder(name, [...sheets.flatMap(({ problems }) => problems), ...order.problems]),
    order,
  };
}

function fileUnder(under: string, problems: readonly Problem[]): Filed[] {
  return problems.map((problem) => ({ problem, under }));
}
