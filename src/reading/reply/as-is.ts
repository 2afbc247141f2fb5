/*
 * Sentences that ask for just what a yes does: to engrave a word as it was typed. Each is a whole clause of closed lists.
 */

const thing = String.raw`(?:it|them|both|all|this|that|these|those|everything|the (?:words?|wording|spellings?|text|names?|legends?|lettering|accents?))`;
const subject = String.raw`(?:it|they|both|this|that|these|those|everything|(?:the |all )?(?:words?|wording|spellings?|text|names?|legends?|lettering))`;
const asIs = String.raw`(?:(?:exactly|just|precisely|really) )?(?:as (?:(?:it|they) (?:is|are|stands?)|is|typed|written|shown|submitted|sent|drawn(?: up)?|given)|like (?:this|that)|so|this way|that way|the way (?:i|we|they|it|he|she) (?:sent|typed|wrote|drew|submitted|gave|is|are|was)(?: (?:it|them|this|that))?)`;
const ask = String.raw`(?:(?:so|then|and|please|kindly|pls|just|now) )*(?:(?:you (?:can|may)|(?:we|i) (?:want|need|would like|'d like)(?: you)? to) )?(?:please |just |now )?`;
const wants = String.raw`(?:we|i|they|he|she|the (?:client|customer|owner|family|architect)) (?:really |all |do )?(?:wants?|needs?|would like|prefers?|would like to have|'d like)`;
const error = String.raw`(?:(?:spelling |typing )?(?:mistakes?|errors?)|typos?|misspelt|misspelled|misspellings?|wrong|slips?)`;

const clause = (...alternatives: readonly string[]): RegExp =>
  new RegExp(`(?<=^|[.!;,]\\s*)(?:${alternatives.join("|")})(?=\\s*(?:[.,;!]|$))`, "giu");

const orders = clause(
  `${ask}(?:leave|keep|engrave|cut|make|do|write) (?:(?:${thing}|em|em both|'em|them both) )?(?:${asIs}|like (?:they|it) (?:are|is))(?: please)?`,
  `(?:it is |they are )?to be (?:engraved|cut|made|left|kept) ${asIs}`,
  `${ask}(?:keep|leave) the (?:wording|spelling|text|accents?|words?|names?|legends?)(?: please)?`,
  `${ask}(?:proceed|continue|go on|go ahead|start|begin|engrave)(?: (?:now|with it|with them|with the (?:order|engraving)|the engraving|please|and oblige|accordingly|at the earliest|(?:the )?soonest|asap))*`,
  `(?:(?:you are|order is) )?(?:ok|okay|good|fine|clear|cleared|approved|released|all set) (?:to|for) (?:proceed|go ahead|go|continue|start|engrave|engraving|cut|cutting|production|release|run|process)(?: (?:it|them|both|all|the order|with (?:it|them|both|all|the order|engraving|production)|to (?:engraving|production)|${asIs}|now|please))*`,
  `${ask}release(?: (?:it|them|both|all|the order))?(?: please)?`,
  `${ask}(?:arrange|release|process|send)(?: (?:the|it|this|them|everything))*(?: (?:production|engraving|order|to|for|into|engraving|asap|at the earliest|now))+`,
);
const wishes = clause(
  `${subject} (?:must|has to|have to|should|shall|can|may|needs? to|is to|are to) (?:stay|remain|read|be (?:written|spelled|spelt|engraved|left|kept|cut)) ${asIs}`,
  `${wants} (?:to (?:keep|leave|have) )?(?:it|them|both|this|that) ${asIs}`,
  `${wants} to (?:keep|leave) (?:it|them|both)`,
);
const faultless = clause(
  `(?:(?:it|they|this|that|these|there|the (?:word|name|spelling|text)) (?:is|are) )?(?:not|no) (?:an? |any )?${error}(?: (?:here|there|in it|at all|on our side))*`,
  `nothing (?:(?:is |to be |needs to be |has to be )?(?:wrong|changed|corrected|fixed)|to (?:change|correct|fix))(?: with it| here| there)*`,
  `(?:and )?(?:${subject} (?:all |both )?)?match(?:es)? (?:(?:what is|what we have|how (?:it|they) (?:is|are)(?: shown)?) (?:on|in) )?(?:(?:the|our|their) )?(?:(?:architect|owner|client|customer)s?'s? )?(?:(?:approved|latest|signed|project|door|room) )*(?:sheets?|drawings?|plans?|schedule|specs?|submittals?|prints?|existing(?: (?:plates?|signs?|ones?|stations?))?)`,
  `(?:that|this|which) is (?:exactly )?(?:how|what|the way) (?:it|they|these|those) (?:is|are|was|were)? ?(?:shown |written |spelled |spelt |called )?(?:on|in) (?:the|our|their) (?:(?:approved|latest|signed|project) )*(?:sheets?|drawings?|plans?|schedule|specs?|submittals?|prints?)`,
  `no need to (?:correct|change|shorten|fix|touch|worry about) (?:it|them|anything|that|this)`,
  `no (?:further |other |more )?(?:changes?|corrections?) (?:(?:is|are) )?(?:needed|necessary|required|wanted)|no (?:further|other|more) (?:changes?|corrections?)`,
);

/** A line in which such clauses are short ones that are known: an order to go ahead, a reason, a word that is no slip. */
export function withoutAsIs(line: string): string {
  return line
    .replace(orders, "go ahead")
    .replace(wishes, "it is a name")
    .replace(faultless, "it is not a typo");
}
