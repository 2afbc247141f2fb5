import { execFile, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, join, resolve } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";

const readme = readFileSync("README.md", "utf8");
const sample = /<!-- sample -->\n```\n([\s\S]*?)```/.exec(readme)?.[1];

/** What README says to type: lines of shell, and calls of burin in its sentences; the table of commands is no advice. */
const typed = (() => {
  const shell = [...readme.matchAll(/^```sh\n([\s\S]*?)^```/gm)].flatMap(([, block = ""]) =>
    block.split("\n"),
  );
  const sentences = readme.replace(/<!-- commands -->[\s\S]*<!-- \/commands -->|^```[\s\S]*?^```/gm, "");
  const calls = [...sentences.matchAll(/`(burin [^`]+)`/g)].map(([, call = ""]) => call);
  return [...new Set([...shell, ...calls].map((line) => line.replace(/ +#.*/, "")))].filter(Boolean);
})();

interface Run {
  /** What stands for a word in capitals. */
  readonly as?: string;
  readonly code: number;
  readonly prints: RegExp | string;
}

/** A line that settles something in the record of the demonstration. */
function settled(does: string, why: string, prints: RegExp): Readonly<Record<string, Run>> {
  const line = `${does} --by "Rosa Imhoff" --why "${why}"`;
  return { [line]: { as: `${line} ${demoSettings}`, code: 0, prints } };
}

const demoSettings = "--settings out/demo/burin.yaml";

/** What is run, in a folder of its own, after `burin demo` there; in this order. */
const ran: Readonly<Record<string, Run>> = {
  "burin blank out/sheets": {
    code: 0,
    prints:
      /^out\/sheets\/device-4\.pdf .*\n.*plate-4\.pdf .*\n.*station-list\.xlsx .*\n.*station-list\.csv .*\n$/,
  },
  "burin fill LIST --out DIR": {
    as: `burin fill ${resolve("fixtures/lists/sedgeholm.csv")} --out out/filled`,
    code: 0,
    prints: /^PASS: order SA-131 is complete, nothing to fix\.\n[^]*17 sheets of this order: OK\./,
  },
  "burin check out/sheets/device-4.pdf": { code: 1, prints: /^FAIL: / },
  "burin check out/demo/letters/27-teasel-characters.eml": { code: 1, prints: sample ?? "a sample" },
  'burin user ines --name "Ines Calloway" --role release': {
    as: `echo "a quill for every wall" | burin user ines --name "Ines Calloway" --role release ${demoSettings}`,
    code: 0,
    prints: /^ines may come in as release\.$/m,
  },
  "burin move RECORD": {
    as: `burin move out/moved ${demoSettings}`,
    code: 0,
    prints: /^letters +\d+ {2}[0-9a-f]{16} {2}the same$/m,
  },
  "burin backup FILE": {
    as: `burin backup out/backup.sqlite ${demoSettings}`,
    code: 0,
    prints: /^out\/backup\.sqlite: \d+ letters, \d+ events, \d+ files by their bytes\.$/m,
  },
  "burin restore FILE": {
    as: `mkdir -p out/other && sed "s/^record: record$/record: ..\\/other\\/record/" out/demo/burin.yaml > out/demo/other.yaml && burin restore out/backup.sqlite --settings out/demo/other.yaml`,
    code: 0,
    prints: /record: \d+ letters, \d+ events, \d+ files by their bytes\.$/m,
  },
  "burin order NUMBER": {
    as: `burin order LL-0093 ${demoSettings}`,
    code: 0,
    prints: /^Order LL-0093: pass\nProject Teasel Lane/,
  },
  "burin people": { as: `burin people ${demoSettings}`, code: 1, prints: /^ 1\. Letter 37: not taken/ },
  ...settled("burin settle FW-1184 1 --yes", "Marta says so on the telephone", /^Order FW-1184: pass\./),
  ...settled(
    'burin settle SW-655 1 --say "Which of the two streets?"',
    "both exist",
    /^Order SW-655: confirm\./,
  ),
  ...settled("burin settle WX-31 2 --waive", "we have the number on file", /^Order WX-31: fail\./),
  ...settled("burin settle --sheet 53/3 --station S-210", "S-201 was a slip", /^Order FW-1202: pass\./),
  ...settled(
    "burin settle --letter 37 --let-in",
    "Dale works for Brightwire",
    /^Let in as letter \d+ of dale@/,
  ),
  ...settled("burin settle --letter 61 --aside", "called: L-14 is made after all", /^Order OG-5534: /),
  "burin order NUMBER --verify": {
    as: `burin order FW-1184 --verify ${demoSettings}`,
    code: 0,
    prints: /events, and their chain is whole\. \d+ orders made again of them come out the same\./,
  },
  "burin release NUMBER --by NAME": {
    as: `burin release LL-0093 --by Ada --out out/released ${demoSettings}`,
    code: 0,
    prints: /^out\/released\/LL-0093 revision \d+\n$/,
  },
  "burin cut --file FILE --by NAME": {
    as: `grep -E "^.?Order|T-1" "out/released/LL-0093"*/schedule.csv > cut.csv; burin cut --file cut.csv --by Ada ${demoSettings}`,
    code: 0,
    prints: /^Order LL-0093: 1 of \d+ pieces are engraved\.\n$/,
  },
  "burin cut NUMBER [STATION…] --by NAME": {
    as: `burin cut LL-0093 --by Ada ${demoSettings}`,
    code: 0,
    prints: /^Order LL-0093 is engraved: \d+ of \d+ pieces\.\n$/,
  },
  "burin work --once": {
    as: `burin work --once ${demoSettings}`,
    code: 0,
    prints: /^0 new letters handled, \d+ seen before\.\n$/,
  },
  "burin day": {
    as: `burin day ${demoSettings}`,
    code: 0,
    prints: /^\d{4}-\d\d-\d\d \(America\/Chicago\): (?:no letter came|\d+ letters)\n\nFigures\n/,
  },
  "burin day 2026-11-09 --html out/day.html": {
    as: `burin day 2026-11-09 --html out/day.html ${demoSettings} && grep -c "<svg" out/day.html`,
    code: 0,
    prints: /^2026-11-09 \(America\/Chicago\): \d+ letters\n[\s\S]*\n\d+\n$/,
  },
  "burin day --from 2026-11-01 --to 2026-11-30 --csv out/month": {
    as: `burin day --from 2026-11-01 --to 2026-11-30 --csv out/month ${demoSettings} && LC_ALL=C ls out/month`,
    code: 0,
    prints: /\nletters-orders\.csv\nletters\.csv\norders\.csv\nproblems\.csv\nquestions\.csv\n$/,
  },
  // The worker has sent what was still to be answered.
  "burin erase ADDRESS": {
    as: `burin erase simone@larchlowe.example ${demoSettings}`,
    code: 0,
    prints: /^Would be erased: \d+ letters, 1 order\.\nOrders: LL-0093\n/,
  },
  "burin erase ADDRESS --really --by NAME --why TEXT": {
    as: `burin erase simone@larchlowe.example --really --by Ada --why "asked for by letter" ${demoSettings}`,
    code: 0,
    prints: /^Erased: \d+ letters, 1 order\. They are counted as erased-1\.\n/,
  },
  "burin edition our-form.pdf --out our-form.yaml": {
    as: "cp out/sheets/device-4.pdf our-form.pdf && burin edition our-form.pdf --out our-form.yaml && cat our-form.yaml",
    code: 0,
    prints: /^edition: our-form$[^]*^ {2}# a guess: its tip says “Station mark”$/m,
  },
  "burin settings --form filled.pdf": {
    as: `burin settings --form ${resolve("fixtures/raw/kestrel-left-qpdf.pdf")}`,
    code: 0,
    prints: /^kestrel-left-qpdf\.pdf is a sheet of device-3: [^]*\n {2}row\.1\.1: “ARRIVAL”\n/,
  },
  "burin explain ID": { as: "burin explain row-too-long", code: 0, prints: /^row-too-long: / },
  "burin settings": { code: 0, prints: /\nNo faults\.\n$/ },
  "burin settings --places": { code: 0, prints: /^project /m },
  "burin settings --domains": { code: 0, prints: /^gmail\.com$/m },
};

/** What is not run, and why. */
const left: readonly (readonly [RegExp, string])[] = [
  [/^npm ci && npm run demo$/, "npm ci asks the registry; `burin demo`, which is the rest of it, is run"],
  [/^npm ci && npm test$/, "these are the tests"],
  [/^npm install -g \.$/, "is run with a --prefix of its own, below"],
  [/^burin (?:settle|cut)$/, "is told of; lines with more behind it are run"],
  [/^(?:cd|useradd|install|cp|set|runuser) /, "sets up a service, as root"],
  [
    /^burin (?:desk|work)$/,
    "runs until it is stopped; tests/real/browser and tests/real/desk serve and work",
  ],
  [/^burin settings --connect/, "needs mail servers; tests/real/desk/connect.test.ts runs it with some"],
];

const folder = mkdtempSync(join(tmpdir(), "burin-readme-"));
afterAll(() => rmSync(folder, { recursive: true }));

function shell(line: string): Promise<{ code: number; out: string; err: string }> {
  const PATH = [join(folder, "installed/bin"), process.env["PATH"]].join(delimiter);
  return new Promise((done) => {
    execFile("sh", ["-c", line], { cwd: folder, env: { ...process.env, PATH } }, (error, out, err) =>
      done({ code: typeof error?.code === "number" ? error.code : 0, out, err }),
    );
  });
}

beforeAll(async () => {
  const installed = spawnSync("npm", [
    "install",
    "-g",
    ".",
    "--offline",
    "--prefix",
    join(folder, "installed"),
  ]);
  expect([installed.status, String(installed.stderr)]).toEqual([0, expect.anything()]);
  const demo = await shell("burin demo");
  expect([demo.code, demo.err]).toEqual([0, ""]);
  // What the demonstration says to try next can be tried.
  const next = demo.out.split("\n").filter((line) => line.startsWith("  burin "));
  expect(next).toHaveLength(3);
  for (const line of next) expect([line, (await shell(line)).code]).toEqual([line, 0]);
}, 600_000);

test("every command in README is run here, or left out for a reason", () => {
  const reasons = typed
    .filter((line) => !(line in ran))
    .map((line) => [line, left.find(([lines]) => lines.test(line))?.[1]]);
  for (const [line, why] of reasons) console.log(`not run: ${line} (${why})`);
  expect(reasons.filter(([, why]) => why === undefined)).toEqual([]);
  expect(Object.keys(ran).filter((line) => !typed.includes(line))).toEqual([]);
  expect(left.filter(([lines]) => !typed.some((line) => lines.test(line)))).toEqual([]);
});

test.each(Object.entries(ran))("%s does what README says", async (line, { as = line, code, prints }) => {
  const ended = await shell(as);
  if (typeof prints === "string") expect(ended.out).toBe(prints);
  else expect(ended.out).toMatch(prints);
  expect(ended.code).toBe(code);
});

test("the command is the one that the unit file starts, and package.json names", () => {
  const { bin } = JSON.parse(readFileSync("package.json", "utf8"));
  expect(
    spawnSync("readlink", ["-f", join(folder, "installed/bin/burin")], { encoding: "utf8" }).stdout.trim(),
  ).toBe(resolve(bin.burin));
  expect(readFileSync("config/burin.service", "utf8")).toMatch(/^ExecStart=\/usr\/local\/bin\/burin work /m);
  expect(readme).toContain("npm install -g --prefix /usr/local .");
});
