import { buttonsOf, type Catalogue, type Finish, type Layout, mostGangs } from "../catalogue/catalogue.ts";

/** The layout that shows most: of four buttons or more with two rows, if there is one, and the smallest of those. */
export function usualLayout(layouts: readonly Layout[]): Layout {
  const worth = (layout: Layout): number =>
    Number(buttonsOf(layout) >= 4) * 4 +
    Number(layout.rows >= 2) * 2 +
    Number(layout.legend_places === undefined);
  const [first] = layouts.toSorted((a, b) => worth(b) - worth(a) || buttonsOf(a) - buttonsOf(b));
  if (first === undefined) throw new Error("the catalogue has no layout");
  return first;
}

/**
 * A finish in which devices and plates of so many gangs are made, and another, if there is one. First come those that are made for many
 * sizes of plate, but not for all.
 */
export function usualFinishes(catalogue: Catalogue, gangs: number): readonly [Finish, Finish | undefined] {
  const made = catalogue.finishes.filter(({ devices, plates }) => devices && plates.includes(gangs));
  const sizes = ({ plates }: Finish): number => plates.length % mostGangs(catalogue);
  const [usual = catalogue.finishes[0], other] = made.toSorted((a, b) => sizes(b) - sizes(a));
  if (usual === undefined) throw new Error("the catalogue has no finish");
  return [usual, other];
}
