import { isOn, readXml } from "./xml.ts";

/** A text, perhaps with a part of it struck out. */
export interface Written {
  readonly text: string;
  readonly struck: boolean;
}

/** The texts that cells point at. ECMA-376-1 §18.4.9 */
export function sharedTexts(xml: string): Written[] {
  const texts: { text: string; struck: boolean }[] = [];
  let [inText, inGuide] = [false, false];
  readXml(xml, {
    open: (name, attributes) => {
      if (name === "si") texts.push({ text: "", struck: false });
      // §18.4.6: how to pronounce it.
      else if (name === "rPh") inGuide = true;
      else if (name === "t") inText = !inGuide;
      else if (name === "strike" && isOn(attributes["val"] ?? "1")) {
        const last = texts.at(-1);
        if (last !== undefined) last.struck = true;
      }
    },
    close: (name) => {
      inText = false;
      if (name === "rPh") inGuide = false;
    },
    text: (written) => {
      const last = texts.at(-1);
      if (inText && last !== undefined) last.text += written;
    },
  });
  return texts.map(({ text, struck }) => ({ text: unescaped(text), struck }));
}

/** ECMA-376-1 §22.9.2.19: what XML cannot hold is written _xHHHH_. */
export function unescaped(text: string): string {
  return text.replace(/_x([\dA-F]{4})_/gi, (_, code: string) =>
    String.fromCharCode(Number.parseInt(code, 16)),
  );
}
