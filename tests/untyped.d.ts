declare module "culori" {
  /** Contrast ratio of two colours by the WCAG formula. */
  export function wcagContrast(one: string, other: string): number;
}
