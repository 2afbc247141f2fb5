import { spawnSync } from "node:child_process";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";

/** One widget as pdf.js sees it; it publishes no type for it. */
export interface Widget {
  readonly fieldName: string;
  readonly fieldType: "Tx" | "Ch" | "Btn";
  readonly fieldValue: unknown;
  readonly alternativeText: string;
  readonly required: boolean;
  readonly readOnly: boolean;
  readonly maxLen: number | null;
  readonly checkBox?: boolean;
  readonly radioButton?: boolean;
  /** The value that a round button stands for. */
  readonly buttonValue?: string;
  readonly options?: readonly { readonly exportValue: string; readonly displayValue: string }[];
  /** What the widget's own drawing shows. */
  readonly textContent?: readonly string[];
  /** Left, lower, right and upper edge in points from the lower left of the page. */
  readonly rect: readonly [number, number, number, number];
}

/** What pdf.js sees of a file: its widgets in the order of the page, its words, its metadata. */
export interface Look {
  readonly widgets: readonly Widget[];
  readonly words: string;
  readonly title: string;
  readonly subject: string;
  readonly language: string;
  readonly pages: number;
  readonly size: readonly [number, number];
}

export async function look(bytes: Uint8Array): Promise<Look> {
  const task = getDocument({
    data: bytes.slice(),
    verbosity: 0,
    useSystemFonts: false,
    disableFontFace: true,
  });
  const pdf = await task.promise;
  const widgets: Widget[] = [];
  let words = "";
  for (let n = 1; n <= pdf.numPages; n++) {
    const page = await pdf.getPage(n);
    widgets.push(...((await page.getAnnotations()) as Widget[]));
    const { items } = await page.getTextContent();
    words += items.map((item) => ("str" in item ? item.str : "")).join(" ");
  }
  const { info } = (await pdf.getMetadata()) as { info: Record<string, string> };
  const [, , width = 0, height = 0] = (await pdf.getPage(1)).view;
  await task.destroy();
  return {
    widgets,
    words: words.replaceAll(/\s+/g, " "),
    title: info.Title ?? "",
    subject: info.Subject ?? "",
    language: info.Language ?? "",
    pages: pdf.numPages,
    size: [width, height],
  };
}

/** Whether a program is installed here. */
export function installed(program: string): boolean {
  return run("which", program).status === 0;
}

export function run(program: string, ...args: readonly string[]) {
  return spawnSync(program, args, { encoding: "utf8" });
}
