/** Words in the name of a host that keeps files for others to fetch. */
const sharingHost =
  /(?:^|[.-])(?:[a-z0-9]*(?:share|drive|transfer|dropbox)(?:s|point|file)?|box|files?|uploads?|send)[.-]/;
/** The path of a link to a file: the name of a file, or a token that nobody types by hand. */
const pathOfFile = /\.(?:pdf|zip|7z|rar)$|\/(?=[\w-]*\d)(?=[\w-]*[a-z])[\w-]{8,}/i;
/** Words with which people speak of such files. */
const speaksOfFiles = /\b(?:download|files?|sheets?|forms?|drawings)\b/i;
/** People speak of a link within so many characters before and behind it. */
const near = 60;
const mostLinks = 20;

/**
 * Links in a text that seem to lead to files. They look like a file's link, and either the host or the words around
 * them say so too. Takes plain text and HTML.
 */
export function fileLinksIn(text: string): string[] {
  const plain = text.replaceAll(/<[^<>]*>/g, linkOfTag).replaceAll("&amp;", "&");
  const links = [...plain.matchAll(/\bhttps?:\/\/[^\s"'<>()[\]]{1,2000}/gi)].filter(({ 0: link, index }) => {
    const words =
      plain.slice(Math.max(0, index - near), index) + plain.slice(index + link.length).slice(0, near);
    return looksLikeFile(link, words);
  });
  return [...new Set(links.map(([link]) => link.replace(/[.,;:!?]+$/, "")))].slice(0, mostLinks);
}

/** The target of an HTML tag, which takes the place of the tag in the text. */
function linkOfTag(tag: string): string {
  return ` ${/^<a\s[^]*?\bhref\s*=\s*["']?([^"'\s>]+)/i.exec(tag)?.[1] ?? ""} `;
}

function looksLikeFile(link: string, words: string): boolean {
  const url = targetOf(link);
  if (url === null) return false;
  const token = pathOfFile.test(url.pathname) || [...url.searchParams.values()].some((v) => v.length >= 16);
  return token && (sharingHost.test(url.hostname) || speaksOfFiles.test(words.replaceAll(/https?:\S+/g, "")));
}

/** Where a link leads. Some mail servers wrap every link into one of their own. */
function targetOf(link: string): URL | null {
  const url = URL.parse(link);
  const inside = [...(url?.searchParams.values() ?? [])].find((value) => /^https?:/i.test(value));
  return inside === undefined ? url : URL.parse(inside);
}
