/**
 * The words of a kind of building, in the lines of a glossary: [words], [abbreviations], [phrases], [company]. They
 * are written by thought of the trade: the parts of the house, who works there, what is done there and what is lit.
 * A word that stands in one list only tells which kind of house a device is for.
 */
export interface Building {
  readonly name: string;
  readonly text: string;
}
