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

/** Legends written by somebody who had seen neither rules nor word lists, ten kinds of buildings in each file. */
export function buildingLegends(): BuildingLegend[] {
  const right = linesOf("right").map(({ building, line }) => ({
    building,
    rows: line.split("/"),
    beside: [],
    kind: "right",
    aside: isAside(line),
  }));
  const wrong = linesOf("wrong").map(({ building, line }) => {
    const [typed = "", meant = "", kind = "", beside] = line.split(" > ");
    const others = beside?.split(", ") ?? [];
    return { building, rows: typed.split("/"), meant, kind, beside: others, aside: isAside(typed) };
  });
  return [...right, ...wrong];
}

export function buildingDevices(): BuildingDevice[] {
  return linesOf("devices").map(({ building, line }) => {
    const [faces = "", slip] = line.split(" !! ");
    const [typed = "", meant = ""] = slip?.split(" > ") ?? [];
    const all = { building, faces: faces.split("; "), aside: isAside(faces) };
    return slip === undefined ? all : { ...all, wrong: { typed, meant } };
  });
}

/** The lines of a file, each with the heading that it stands under. */
function linesOf(file: string): { readonly building: string; readonly line: string }[] {
  let building = "";
  return readFileSync(`tests/bench/legends/buildings/${file}.txt`, "utf8")
    .split("\n")
    .flatMap((line) => {
      if (line.startsWith("# ")) building = line.slice(2);
      return line === "" || line.startsWith("#") ? [] : [{ building, line }];
    });
}
