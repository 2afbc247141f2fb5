import type { Glyph, Glyphs } from "./glyphs.ts";

/** Letters and digits that look alike in print: each with those that it may be taken for. */
const alike =
  "CG CO GO OQ GQ DO O0 Q0 EF EB FP PR PB PD RB RK RA HN HM MN HK HA NM VY UV VW XK XY IT TY TF T7 LE LI 5S 2Z 8B S8 38 3B 6G 60 69 89 98 14 17 71 UO UJ UD " +
  "hn hb hk nr nm nu ce co eo ae oa tf ft uv vy vu bh bo gq gy pq dq da do ao rn sz";

const rivals = new Map<string, string>();
for (const [one = "", other = ""] of alike.split(" ")) {
  rivals.set(one, (rivals.get(one) ?? "") + other);
  rivals.set(other, (rivals.get(other) ?? "") + one);
}

/** The letters that a letter may be taken for. */
export function rivalsOf(character: string, glyphs: Glyphs): Glyph[] {
  return [...(rivals.get(character) ?? "")].flatMap((one) => glyphs.get(one) ?? []);
}
