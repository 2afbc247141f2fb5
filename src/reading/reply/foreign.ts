import { tokensOf } from "./word-bag.ts";

/** Small words of German, French, Spanish, Italian, Dutch, Portuguese and Polish; a few look like English ones. */
const foreign = new Set(
  tokensOf(
    `nicht bitte und oder alles alle nur noch wir ist sind wird werden soll sollen kein keine auf für mit von zur zum
    ohne statt die der das den dem ein eine pas veuillez sur avec pour dans est sont doit avant après merci de le la
    les des du un une en ne rien pouvez vous nous tous toutes el los las por para con sin pero todo todos antes
    después lo se es más che non per il gli graag niet het een voor não nie proszę`,
  ),
);

/** Whether words are in another language than English. */
export function isForeign(said: string): boolean {
  if (/(?!\p{Script=Latin})\p{L}/u.test(said.replace(/[µΩ]/gu, ""))) return true;
  const tokens = said.match(/\p{L}+/gu) ?? [];
  const strange = tokens.filter(
    (token, i) =>
      (i === 0 || /^\p{Ll}/u.test(token)) && (foreign.has(token.toLowerCase()) || /\P{ASCII}/u.test(token)),
  );
  return strange.length > 1 && strange.length * 6 >= tokens.length;
}
