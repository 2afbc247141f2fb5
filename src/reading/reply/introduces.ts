import { tokensOf } from "./word-bag.ts";

/** What introductions of answers consist of, whoever gave these, and in whatever colour they stand. */
const around = new Set(
  tokensOf(
    `hi hello hey dear team all both there please pls plz kindly see find note refer to herewith here is are my our
    the their his her your this these those them below above under underneath beneath following follows as in on of for
    with and regard regards regarding respect reference per re about concerning from trailing mail email e message letter
    order check checks list number numbers red blue green purple orange yellow bold italics caps capitals inline in
    line text colour color customer customers customer's client clients client's s owner owner's owners boss he she they we i you have has had been
    added put written typed given marked asked raised sent today yesterday morning each every point points item items
    query queries question questions answer answers answered reply replies response responses responded comment comments
    confirmation feedback remark remarks thanks thank`,
  ),
);
const answers =
  /(?<!\p{L})(?:answers?|answered|repl(?:y|ies)|responses?|comments?|confirmation|feedback|remarks|quer(?:y|ies)|questions?|points|items|below|inline|in line|follows)(?!\p{L})/iu;

/** "Per Mark:", "From our customer:" */
const whose =
  /^(?:[Aa]s )?(?:[Pp]er|[Ff]rom|[Aa]cc(?:ording)?\.? to) (?:(?:my|our|the) )?\p{L}+(?: \p{L}+)?:$|^(?:\p{Lu}\p{Ll}+|he|she|(?:the|our|my) (?:customer|client|owner|boss|contractor|architect|designer)) (?:says|said|answers|answered|writes|wrote)(?: (?:this|as follows))?:$/u;

/** In words. */
const most = 16;

/** Whether a line only introduces the answers that follow it, or stand between what it quotes. */
export function introduces(line: string): boolean {
  if (/[?\d]/u.test(line)) return false;
  const tokens = tokensOf(line);
  return (
    whose.test(line) ||
    (tokens.length <= most && answers.test(line) && tokens.every((token) => around.has(token)))
  );
}
