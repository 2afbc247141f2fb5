import { builder, type Workshop } from "../../src/demo/build.ts";
import type { AttachmentDescription } from "../../src/demo/describe.ts";
import { composeLetter } from "../../src/demo/letter.ts";

const words = ["READING", "FOYER", "EVENING", "PRESENT", "DINING", "GALLERY", "STAIR", "TERRACE", "KITCHEN"];

/**
 * Orders as letters, one after another, of so many buyers in turn: with plates of two and three gangs, and with two
 * devices alone. Every sixth forgets the legends of its plates.
 */
export async function* ordersOf(
  count: number,
  buyers: number,
  workshop: Workshop,
): AsyncGenerator<Uint8Array> {
  const build = builder(workshop);
  for (let i = 0; i < count; i++) {
    const attachments = await Promise.all(
      sheetsOf(i, `buyer${i % buyers}`).map(async (one) => ({ file: one.file, bytes: await build(one) })),
    );
    yield composeLetter(
      {
        name: `order-${i}`,
        from: `Ida Marlowe <ida@buyer${i % buyers}.example>`,
        date: "2026-11-09T09:00:00-06:00",
        subject: `Order C-${i}`,
        text: "Please find our sheets attached.\n\nIda",
        logo: false,
      },
      { to: "orders@quillgate.example", attachments },
    );
  }
}

function sheetsOf(i: number, buyer: string): (AttachmentDescription & { readonly like: string })[] {
  const word = (k: number): string => words[(i + k) % words.length] ?? "";
  const head = {
    "contact.email": `ida@${buyer}.example`,
    "bill.name": `Firm of ${buyer}`,
    project: `Tern Point ${buyer}`,
    order: `C-${i}`,
    mark: `S-${i}`,
    finish: "Barley",
    lettering: "Sepia",
  };
  const device = (fill: Readonly<Record<string, string>>, k: number) => ({
    file: `${head.mark} ${k}.pdf`,
    like: "fenwright",
    fill: { ...head, layout: "TRIO", ...fill },
    legends: { "1": [word(k)], "2": ["DIM"], "3": ["OFF"] },
    plain: fill["standing"] === "alone" && i % 6 === 0 ? ["plate"] : [],
  });
  if (i % 3 === 0) return [1, 2].map((k) => device({ mark: `S-${i}-${k}`, standing: "alone" }, k));
  const gangs = String((i % 3) + 1);
  const positions = Array.from({ length: Number(gangs) }, (_, k) => k + 1);
  return [
    {
      file: `${head.mark} plate.pdf`,
      like: "fenwright",
      edition: "plate-4",
      fill: { ...head, gangs },
      legends: Object.fromEntries(positions.map((k) => [String(k), [word(k)]])),
      plain: [],
    },
    ...positions.map((k) => device({ standing: "in-plate", position: String(k), gangs }, k)),
  ];
}
