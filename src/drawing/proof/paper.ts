interface Size {
  readonly width: number;
  readonly height: number;
}

/** US Letter, Legal and Tabloid on their long side, in millimetres. */
const papers: readonly Size[] = [
  { width: 279.4, height: 215.9 },
  { width: 355.6, height: 215.9 },
  { width: 431.8, height: 279.4 },
];

/** The smallest paper that is large enough. A larger drawing has a page of its own size. */
export function paperFor(needed: Size): Size {
  const isEnough = ({ width, height }: Size): boolean => width >= needed.width && height >= needed.height;
  return papers.find(isEnough) ?? needed;
}
