/**
 * The colours of an answer, and what each is where its reader has everything dark. Writing has a contrast of at least
 * 4.5 to 1 with every ground of its kind (WCAG 2.2, 1.4.3). A band in a colour of its own has white writing and stays.
 */
export const darkOf = {
  writing: {
    "#1b1b1d": "#ececee",
    "#55595f": "#b4b8be",
    "#9c2a1f": "#ffa399",
    "#84560b": "#f0bd6b",
    "#59417a": "#cdb4f0",
    "#1f5673": "#92cbe8",
    "#2b6238": "#8fd3a0",
  },
  grounds: { "#ffffff": "#1b1b1d", "#f3f1ea": "#2b2b2f" },
  lines: { "#dcd9d0": "#4b4b52", "#c9c6bd": "#5c5c64" },
  link: "#9ec5ff",
} as const;

/**
 * The style of an answer's head. Every element has its colours itself, since many mail programs drop this; so each
 * rule goes by the colour that it replaces. Pictures keep the white ground that they were drawn on.
 */
export function darkStyle(): string {
  const { writing, grounds, lines, link } = darkOf;
  const rules = [
    ...pairs(grounds).map(([light, dark]) => `[style*="background:${light}"]{background:${dark}!important}`),
    // Headings and frames are in the colour of their writing.
    ...pairs({ ...lines, ...writing }).map(
      ([light, dark]) => `[style*="solid ${light}"]{border-color:${dark}!important}`,
    ),
    ...pairs(writing).map(
      ([light, dark]) => `[style*=";color:${light}"],[style^="color:${light}"]{color:${dark}!important}`,
    ),
    `a{color:${link}!important}`,
    "img{background:#ffffff!important}",
  ];
  return `:root{color-scheme:light dark}\n@media (prefers-color-scheme:dark){\n${rules.join("\n")}\n}`;
}

function pairs(colours: Readonly<Record<string, string>>): [light: string, dark: string][] {
  return Object.entries(colours);
}
