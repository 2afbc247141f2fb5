import { stat } from "node:fs/promises";
import { proofPictures, proofsFor, type Revisions } from "../answer/enclosures.ts";
import { makeReport, type Report } from "../judging/report.ts";
import { withKept } from "../lettering/with-kept.ts";
import { buyerOption, chosenOrder } from "./chosen-order.ts";
import { CannotRun, defineCommand } from "./command.ts";
import { type Configuration, configure, settingsOption } from "./configuration.ts";
import { readRecord } from "./record.ts";
import { checkPaths, withReader, writeFiles } from "./submission.ts";

export const proof = defineCommand({
  name: "proof",
  words: [1, Number.POSITIVE_INFINITY],
  details:
    "PATH is a PDF, a letter (.eml) or a folder of them. A NUMBER is an order of the record: drawn are its sheets that\ncount. One PDF for each order, a page for each station; print it at 100 %. Faces with something to fix are outlined.",
  options: {
    svg: { type: "boolean", tells: "a picture of each page besides, as SVG" },
    out: { type: "string", takes: "DIR", tells: "where to write (default: the folder you stand in)" },
    ...buyerOption,
    ...settingsOption,
  },
  async run(words, { out: folder = ".", svg, buyer, settings }, { out, err }) {
    const configuration = await configure(settings);
    const [first = ""] = words;
    const isPath = words.length > 1 || (await stat(first).catch(() => undefined)) !== undefined;
    if (isPath && buyer !== undefined)
      throw new CannotRun("--buyer says whose order of the record is meant; leave it out with a PATH");
    const { report, revisions } = isPath
      ? {
          ...(await withReader(configuration, (reader) =>
            checkPaths(words, configuration, reader, (path) => {
              err(`not read: ${path}`);
            }),
          )),
          revisions: undefined,
        }
      : await recordedOrder(first, buyer, configuration);
    const proofs = await proofsFor(report, configuration.catalogue, revisions);
    if (proofs.length === 0) throw new CannotRun("there is no sheet to draw");
    const pictures = svg === true ? proofPictures(report, configuration.catalogue, revisions) : [];
    for (const path of await writeFiles([...proofs, ...pictures], folder)) out(path);
    return 0;
  },
});

async function recordedOrder(
  number: string,
  buyer: string | undefined,
  configuration: Configuration,
): Promise<{ report: Report; revisions: Revisions }> {
  const store = await readRecord(configuration);
  try {
    const order = await chosenOrder({ store }, number, buyer);
    if (order === undefined)
      throw new CannotRun(
        buyer === undefined
          ? `“${number}” is neither a file nor an order of the record`
          : `“${number}” is no order of ${buyer}`,
      );
    const kept = await store.buyers.keptWords(order.buyer);
    const state = await store.buyers.stateOf(order.buyer, [number]);
    const report = makeReport(
      { files: [], sheets: [], about: [number] },
      withKept(configuration.catalogue, kept),
      state,
    );
    return { report, revisions: new Map(report.orders.map((one) => [one.order.number, order.revision])) };
  } finally {
    await store.close();
  }
}
