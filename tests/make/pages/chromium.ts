import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import type { SheetValues } from "../../../src/drawing/fill-sheet.ts";
import { withPdf } from "../../../src/reading/pdf/pdf.ts";
import type { Annotation } from "../../../src/reading/pdf/pdfjs-annotations.ts";

/** A browser that is driven over its DevTools protocol. */
interface Browser {
  readonly send: (method: string, params?: object, session?: string) => Promise<Record<string, unknown>>;
  readonly close: () => void;
}

/** Fills forms by mouse and keys in Chromium's own viewer, and saves each as its download button does. */
export async function fillInChromium(
  sheets: readonly { readonly blank: Uint8Array; readonly values: SheetValues }[],
): Promise<(Uint8Array | undefined)[]> {
  const folder = mkdtempSync(join(tmpdir(), "burin-chromium-"));
  const filled: (Uint8Array | undefined)[] = [];
  for (const [i, { blank, values }] of sheets.entries()) {
    const file = join(folder, `${i}.pdf`);
    writeFileSync(file, blank);
    // A fresh browser each time: its viewer keeps nothing of the sheet before.
    const browser = await start(join(folder, `profile-${i}`));
    try {
      filled.push(await fill(browser, file, blank, values));
    } finally {
      browser.close();
    }
  }
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  return filled;
}

async function start(profile: string): Promise<Browser> {
  const flags = ["--headless=new", "--no-sandbox", "--disable-gpu", "--window-size=1400,1200"];
  const program = spawn(
    "chromium",
    [...flags, `--user-data-dir=${profile}`, "--remote-debugging-port=0", "about:blank"],
    { stdio: "ignore" },
  );
  const socket = new WebSocket(await addressIn(profile, program));
  await new Promise((resolve) => socket.addEventListener("open", resolve));
  const waiting = new Map<number, (result: Record<string, unknown>) => void>();
  socket.addEventListener("message", ({ data }) => {
    const { id, result = {} } = JSON.parse(String(data)) as { id?: number; result?: Record<string, unknown> };
    if (id !== undefined) waiting.get(id)?.(result);
  });
  let last = 0;
  return {
    send: (method, params = {}, sessionId) =>
      new Promise((resolve) => {
        waiting.set(++last, resolve);
        socket.send(JSON.stringify({ id: last, method, params, sessionId }));
      }),
    close: () => program.kill("SIGKILL"),
  };
}

async function addressIn(profile: string, program: ChildProcess): Promise<string> {
  for (let tries = 0; tries < 100 && program.exitCode === null; tries++) {
    await wait(150);
    try {
      const [port, path] = readFileSync(join(profile, "DevToolsActivePort"), "utf8").split("\n");
      if (path) return `ws://127.0.0.1:${port}${path}`;
    } catch {
      // not written yet
    }
  }
  throw new Error("Chromium does not start");
}

/** Where the middle of the page's upper edge is in the window of that size at 100 %, and pixels of a point. */
const middle = { x: 849.6, y: 59.2 };
const pixels = 96 / 72;

async function fill(
  { send }: Browser,
  file: string,
  blank: Uint8Array,
  values: SheetValues,
): Promise<Uint8Array | undefined> {
  const { targetId } = await send("Target.createTarget", { url: `file://${file}` });
  const page = String((await send("Target.attachToTarget", { targetId, flatten: true }))["sessionId"]);
  await wait(4000);
  const { targetInfos } = (await send("Target.getTargets")) as unknown as {
    targetInfos: readonly { readonly targetId: string; readonly url: string }[];
  };
  const viewer = targetInfos.find(({ url }) => url.startsWith("chrome-extension:"));
  const attached = await send("Target.attachToTarget", { targetId: viewer?.targetId, flatten: true });
  const { view, widgets } = await withPdf(blank, async (pdf) => {
    const first = await pdf.getPage(1);
    return { view: first.view, widgets: (await first.getAnnotations()) as Annotation[] };
  });
  const click = async ([left, bottom, right, top]: Annotation["rect"]): Promise<void> => {
    const x = middle.x + ((left + right - (view[2] ?? 0)) / 2) * pixels;
    const y = middle.y + ((view[3] ?? 0) - (bottom + top) / 2) * pixels;
    for (const type of ["mouseMoved", "mousePressed", "mouseReleased"])
      await send(
        "Input.dispatchMouseEvent",
        { type, x, y, button: type === "mouseMoved" ? "none" : "left", clickCount: 1 },
        page,
      );
    await wait(120);
  };
  const type = async (words: string): Promise<void> => {
    for (const text of words) await send("Input.dispatchKeyEvent", { type: "char", text }, page);
    await wait(50);
  };
  for (const { rect, fieldName = "", checkBox, radioButton, buttonValue, combo, options } of widgets) {
    const value = values[fieldName];
    if (value === undefined || value === "") continue;
    if (checkBox || radioButton) {
      if (value === true || (value !== false && value === buttonValue)) await click(rect);
      continue;
    }
    await click(rect);
    if (!combo) {
      await type(String(value).replaceAll("\n", "\r"));
      continue;
    }
    // A letter leads to the first choice that begins with it, and again to the next.
    const first = String(value).slice(0, 1);
    const same = (options ?? []).filter(({ displayValue }) => displayValue.startsWith(first));
    await type(first.repeat(same.findIndex(({ displayValue }) => displayValue === value) + 1));
    await type("\r");
    // The list may lie over the next field; a click beside it closes it.
    await click(corner);
  }
  await click(corner);
  const { result } = (await send(
    "Runtime.evaluate",
    { expression: saving, awaitPromise: true, returnByValue: true },
    String(attached["sessionId"]),
  )) as { result?: { readonly value?: string } };
  return result?.value === undefined ? undefined : Buffer.from(result.value, "base64");
}

/** A place without a field. */
const corner: Annotation["rect"] = [2, 2, 4, 4];

/** What the download button does once “With your changes” is chosen. */
const saving = `(async () => {
  const { dataToSave } = await document.querySelector("pdf-viewer").currentController.save("EDITED");
  const bytes = new Uint8Array(dataToSave);
  let text = "";
  for (let i = 0; i < bytes.length; i += 32768) text += String.fromCharCode(...bytes.subarray(i, i + 32768));
  return btoa(text);
})()`;
