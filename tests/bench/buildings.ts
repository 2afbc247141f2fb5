import { readFileSync } from "node:fs";
import { isAside, type Legend } from "./legends.ts";

/** A legend of some kind of building. */
export interface BuildingLegend extends Legend {
  readonly building: string;
  /** What the other faces of its device say. */
  readonly beside: readonly string[];
}

/** A device of some kind of building, of whose legends one may be wrong. */
interface BuildingDevice {
  readonly building: string;
  readonly faces: readonly string[];
  readonly wrong?: { readonly typed: string; readonly meant: string };
  readonly aside: boolean;
}

/**
 * Legends of ten kinds of buildings. "buildings" are by somebody who had seen neither rules nor word lists. "walls" are
 * whole devices and slips made of such legends by hand. Whoever made them had seen the rules, and did so before
 * tuning them: letters mistaken, left out or added until another English word stood there. "blind" and "rooms" are whole
 * devices, slips, misspelt and cut words by two people who had seen nothing.
 */
export const legendSets = ["buildings", "walls", "blind", "rooms"] as const;
type LegendSet = (typeof legendSets)[number];

export function buildingLegends(set: LegendSet): BuildingLegend[] {
  const wrong = linesOf(set, "wrong").map(({ building, line }) => {
    const [typed = "", meant = "", kind = "", beside] = line.split(" > ");
    const others = beside?.split(", ") ?? [];
    return { building, rows: typed.split("/"), meant, kind, beside: others, aside: isAside(typed) };
  });
  return [...(set === "buildings" ? rightOf(set) : facesOf(set)), ...wrong];
}

function rightOf(set: LegendSet): BuildingLegend[] {
  return linesOf(set, "right").map(({ building, line }) => ({
    building,
    rows: line.split("/"),
    beside: [],
    kind: "right",
    aside: isAside(line),
  }));
}

/** Every face of a right device with the others beside it. */
function facesOf(set: LegendSet): BuildingLegend[] {
  return buildingDevices(set).flatMap(({ building, faces, aside }) =>
    faces.map((face, at) => ({
      building,
      rows: face.split("/"),
      beside: faces.filter((_, i) => i !== at),
      kind: "right",
      aside,
    })),
  );
}

export function buildingDevices(set: LegendSet): BuildingDevice[] {
  return linesOf(set, "devices").map(({ building, line }) => {
    const [faces = "", slip] = line.split(" !! ");
    const [typed = "", meant = ""] = slip?.split(" > ") ?? [];
    const all = { building, faces: faces.split("; "), aside: isAside(faces) };
    return slip === undefined ? all : { ...all, wrong: { typed, meant } };
  });
}

/** The lines of a file, each with the heading that it stands under. */
function linesOf(set: LegendSet, file: string): { readonly building: string; readonly line: string }[] {
  let building = "";
  return readFileSync(`tests/bench/legends/${set}/${file}.txt`, "utf8")
    .split("\n")
    .flatMap((line) => {
      if (line.startsWith("# ")) building = line.slice(2);
      return line === "" || line.startsWith("#") ? [] : [{ building, line }];
    });
}
