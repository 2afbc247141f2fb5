import { wordsOf } from "../checks/run.ts";
import type { Report } from "../judging/report.ts";
import type { FileKind } from "../trade/attachment.ts";
import type { Fact, Problem, Severity, Verdict } from "../trade/problem.ts";
import type { FileId, Sheet } from "../trade/sheet.ts";

/** A report for programs. Every key is always there; what is not known is null. */
export interface ReportJson {
  readonly verdict: Verdict;
  readonly sheets: readonly {
    readonly file: string;
    readonly kind: Sheet["kind"];
    readonly edition: string;
    readonly order: string | null;
    readonly project: string | null;
    readonly station: string | null;
    readonly position: number | null;
    readonly verdict: Verdict;
    readonly problems: readonly ProblemJson[];
  }[];
  readonly orders: readonly {
    readonly order: string | null;
    readonly project: string | null;
    readonly verdict: Verdict;
    readonly missing: readonly {
      readonly station: string | null;
      readonly position: number | null;
      readonly kind: Sheet["kind"];
    }[];
    readonly problems: readonly ProblemJson[];
  }[];
  readonly attachments: readonly {
    readonly file: string;
    readonly kind: FileKind;
    readonly problems: readonly ProblemJson[];
  }[];
  /** Problems of the submission as a whole. */
  readonly problems: readonly ProblemJson[];
}

interface ProblemJson {
  readonly check: string;
  readonly severity: Severity;
  readonly says: string;
  readonly fix: string;
  readonly spots: readonly {
    readonly file: string;
    /** Name of the form's field. */
    readonly field: string | null;
    /** The label printed beside it. */
    readonly label: string | null;
    /** Row of a legend, counted from 1. */
    readonly row: number | null;
  }[];
  readonly facts: Readonly<Record<string, Fact>>;
}

/** A report as a plain object, ready for `JSON.stringify`. Throws if a problem points at a file that is not in it. */
export function reportJson(report: Report): ReportJson {
  const sheets = new Map<FileId, Sheet>();
  const names = new Map<FileId, string>(report.files.map(({ file }) => [file.id, file.file]));
  for (const sheet of [...report.sheets.map(({ sheet }) => sheet), ...report.earlier]) {
    sheets.set(sheet.id, sheet);
    names.set(sheet.id, sheet.file);
  }
  const told = (problems: readonly Problem[]): ProblemJson[] =>
    problems.map((problem) => ({
      check: problem.check,
      severity: problem.severity,
      ...wordsOf(problem),
      spots: problem.spots.map(({ file, place }) => {
        const name = names.get(file);
        if (name === undefined) throw new Error(`a problem points at ${file}, which is not in its report`);
        const print = place === undefined ? undefined : sheets.get(file)?.prints[place];
        const [what, , row] = place?.split(".") ?? [];
        return {
          file: name,
          field: print?.field ?? null,
          label: print?.label ?? null,
          row: what === "row" ? Number(row) : null,
        };
      }),
      facts: problem.facts,
    }));
  return {
    verdict: report.verdict,
    sheets: report.sheets.map(({ sheet, verdict, problems }) => ({
      file: sheet.file,
      kind: sheet.kind,
      edition: sheet.edition.name,
      order: sheet.order ?? null,
      project: sheet.project ?? null,
      station: sheet.mark ?? null,
      position: sheet.kind === "device" ? (sheet.position ?? null) : null,
      verdict,
      problems: told(problems),
    })),
    orders: report.orders.map(({ order, verdict, missing, problems }) => ({
      order: order.number === "" ? null : order.number,
      project: order.project ?? null,
      verdict,
      missing: missing.map(({ station, position, kind }) => ({
        station: station === "" ? null : station,
        position: position ?? null,
        kind,
      })),
      problems: told(problems),
    })),
    attachments: report.files.map(({ file, problems }) => ({
      file: file.file,
      kind: file.kind,
      problems: told(problems),
    })),
    problems: told(report.problems),
  };
}
