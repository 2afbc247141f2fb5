import { wordsOf } from "../checks/run.ts";
import { problemKinds } from "../drawing/kinds.ts";
import type { MarkedProblem } from "../drawing/marked/problem.ts";
import { proofPdf } from "../drawing/proof.ts";
import { withKept } from "../lettering/with-kept.ts";
import { gatherOrders } from "../orders/gather.ts";
import { type Ask, type Front, Refused, visitorOf } from "./front.ts";

/** Pixels that a page is wide. */
const pageWidth = 1_000;

/**
 * A file of a letter, to be kept and not to be opened here: whatever it holds, it is of no type that a browser runs, and
 * it has no rights where it is opened all the same.
 */
export async function fileOf(c: Ask, { desk }: Front, id: string): Promise<Response> {
  visitorOf(c);
  const bytes = await bytesOf(desk.store, id);
  return download(bytes, `file ${id.replace("/", "-")}`);
}

/** Bytes to be kept as a file of this name. */
export function download(bytes: Uint8Array, name: string, type = "application/octet-stream"): Response {
  return new Response(Buffer.from(bytes), {
    headers: {
      "content-type": type,
      "content-disposition": `attachment; filename*=UTF-8''${encodeURIComponent(name)}`,
      "x-content-type-options": "nosniff",
      "cache-control": "private, no-store",
    },
  });
}

/** A page of a sheet as it was sent, as a picture, with what is wrong outlined. */
export async function pageOf(c: Ask, { desk }: Front, id: string, page: number): Promise<Response> {
  visitorOf(c);
  const { store, reader } = desk;
  const bytes = await bytesOf(store, id);
  const problems = await marksOn(desk, id);
  const [sheet] = await store.orders.sheets([id]);
  const marked =
    sheet !== undefined && problems.length > 0 ? await reader.mark(bytes, sheet, problems) : undefined;
  const shown = marked?.ok === true ? (marked.value.copy ?? bytes) : bytes;
  const drawn = await reader.page(shown, { page, width: pageWidth });
  if (!drawn.ok || drawn.value.png === undefined) throw new Refused(404, "That page cannot be shown.");
  return new Response(Buffer.from(drawn.value.png), {
    headers: {
      "content-type": "image/png",
      "x-content-type-options": "nosniff",
      "cache-control": "private, no-store",
    },
  });
}

/** What is to be outlined on a sheet that stands: what stops it and what is asked, under the numbers of its order. */
async function marksOn({ store }: Front["desk"], id: string): Promise<MarkedProblem[]> {
  const holding = await store.orders.holding(id);
  if (holding === undefined) return [];
  const order = (await store.orders.named(holding.number)).find(({ buyer }) => buyer === holding.buyer);
  const asked = order?.questions ?? [];
  return asked.flatMap(({ number, problem }) => {
    const spots = problem.spots.filter(({ file }) => file === id);
    const kind = problemKinds.find((one) => one === problem.verdict);
    if (spots.length === 0 || kind === undefined) return [];
    const places = [...new Set(spots.flatMap((spot) => spot.place ?? []))];
    const seen = spots.flatMap((spot) => (spot.place === undefined && spot.seen?.box ? [spot.seen] : []));
    return { number, ...wordsOf(problem), kind, places, ...(seen.length === 0 ? {} : { seen }) };
  });
}

/** The proof of an order as it stands. */
export async function proofOf(c: Ask, { desk }: Front, number: string): Promise<Response> {
  visitorOf(c);
  const orders = await desk.store.orders.named(number);
  const buyer = c.req.query("buyer");
  const order = orders.find((one) => buyer === undefined || one.buyer === buyer);
  const [gathered] = order === undefined ? [] : gatherOrders(order.sheets);
  if (order === undefined || gathered === undefined) throw new Refused(404, "There is nothing to draw.");
  const catalogue = withKept(desk.catalogue, await desk.store.buyers.keptWords(order.buyer));
  return download(
    await proofPdf(gathered, catalogue, { revision: order.revision }),
    `proof ${order.number}.pdf`,
    "application/pdf",
  );
}

async function bytesOf(store: Front["desk"]["store"], id: string): Promise<Uint8Array> {
  const files = await store.orders.originals([id]).catch(() => undefined);
  const bytes = files?.get(id);
  if (bytes === undefined) throw new Refused(404, "No such file is in the record.");
  return bytes;
}
