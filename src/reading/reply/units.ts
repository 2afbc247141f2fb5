import { letterOf, patternOf } from "./lexicon.ts";
import type { Token } from "./tokens.ts";

/*
 * What a run of words may be, by the kinds of its words: an answer, a reason, a report, or nothing. All patterns are
 * over one letter a kind (lexicon.ts).
 */

const parts: Record<string, string> = {};
/** Gives a pattern a name, by which later ones call it. */
function part(name: string, source: string): void {
  parts[name] = patternOf(source, parts);
}

part("My", "(My|Your)");
part("Be", "(Is|Are)");
part("Art", "(The|A|My)");
part("Nm", "(Name|Word)");
part("By", "(Boss|Person)");
part("Who", "((The|A|My)? (Boss|Person)|We|Pron|It)");
part("Own", "((The|A|My)? Adj* (Boss|Person|Thing) Is?)");
part("Sub", "(It? (Word|Nm)|It|All|Art? Nm)");
part("Obj", "(It? (Word|Nm)|It|Pron|Art? (Word|Nm))");
part("Det", "(Own|The|A|My|Nation)");
part("Fair", "(Adj|Good|Adv)");
part("Very", "(Adv|Sure|All|Too)");
part("Fit", "(Very* (Good|Confirmed|Ok) (Good|So|Ours|Very|There)*)");
part("Thus", "(So|There|Very|In The? Nation Lang?|Years)");

// Numbers: "2", "your question no. 2", "the second one", "(2)".
part("Lab", "((The|A|Your)? (All|Too)? Label+ Mark?)");
part("Fig", "(Mark? Num Mark?)");
part("One", "(At* The? Fig|(At|In)* Lab (Fig|Count)|(At|In)* (The|My)? Nth (Label|Count)?|At+ Count)");
part("Bare", "(One|Count)");
part("Tie", "(Mark|And|Thru)*");
part("Tail", "((Of|In|At) Art (Mail|Answer))?");
part("List", "(All? One (Tie One)* Tail)");
part("Spoken", "(All? One ((Tie|AndN) One)* Tail)");
part("Lists", "(All? Bare (Tie Bare)* Tail)");
part(
  "Set",
  "((At|In)* Of? (The|My)? All (Of? (The|My|It|Pron))? (Num|Count)? (Label|Word|Answer|Name)*|(At|In)* The Count (Label|Word|Name)?)",
);

part("Yeses", "((A|The)? Yes (Mark* (And|Mark)* A? Yes)*)");
part("Noes", "((A|The)? No (Mark* A? No)*)");
part("Right", "(Be Very* Art? Fair* (Good|Confirmed|Ok) (Nm|So|Ours|Very|There|In Nation)*)");
part("Call", "(Spell|Called)");
part("Term", "(Spelt|Called)");
part("HowTo", "((How|The Nm) Who Very* Call Obj? (Thus|Ours)*|How It Very* Be Very* Term Thus*)");
part("Wrong", "(Be Very* (A|My|The)? Adv* Bad)");
part("Unfit", "(Be Not Very* (Good|Confirmed|Ok) So?)");
part("Saying", "((Says|Confirmed|Checked) When* It?)");

/** What stands before the number in its sentence. */
part(
  "Lead",
  "((Sure|Adv) Mark*|Ours Mark*|(Art? Answer (Be|Mark|Follows|And|In|At|Of)*)|(Confirm (?!Art? Answer)|ISay|We Adv* (Say|Answer) It?|We Say) Mark*|Art? Word+ Raised* (In|At|Of)*|(And|So) Mark*|(At|In|With) (The|My|It) Mail Mark*|Art? (Boss|Person) Saying Mark*|Pron Saying Mark*|In? Follows Mark*)*",
);
/** What stands between a number and its answer. */
part(
  "Mid",
  "((Mark|Follows)* (All|Too|Very)* Mark* (It? Be|Art? Answer Be?|We Adv* (Say|Answer)|Art? (Boss|Person) Saying|Pron Saying)? Mark* (All|Very)* Mark*)",
);

part(
  "YesSaid",
  "((Mid Yeses Ours*|Mark* (All|It)* Right|Mark* Ok Good+|(Mark+ Art?|Art) (Word|Name) Right|Mark* (All|Very)* (Good|Confirmed) (Good|So|Ours|Very)*|Mark* It? Be HowTo|Mark* It? NoSlip|Mark* (Confirm|Please? Go)|Mark* Be Very* Per Art? (Person|Boss)+ (When|With)*|With Yeses) (Mark* At* All)?)",
);
part(
  "NoSaid",
  "((Mid Noes|Mark* (All|It)* (Wrong|Unfit)|Mark* (All|Very)* (A|My)? Bad|Mark* Not (Good|Confirmed)) (Mark* At* All)?)",
);
part("Given", "((It Be)? Very* Yeses (Ours|Please|Sure|Polite|Good|Boss)* (Mark|And)*)");
part("Denied", "((It Be)? Very* Noes (Ours|Polite)* Mark*)");

/** Why a word is meant so. */
part("Named", "(Fair* Nation* Lang? (Thing|Person)* Nm+)");
part(
  "OfWhom",
  "((Of|At|In) Det* Count? Fair* Nation* (Boss|Person|Thing)+ (Of Det* Fair* (Boss|Person|Thing)+)? (Mark? The Word)?)",
);
part("NameOf", "(Det* Named (OfWhom|At Nm)* (HowTo)? (In Nation)? Years? There?)");
part("Why", "((Because Mark*)? Mark*)");

const whole = (source: string): RegExp => new RegExp(`^(?:${patternOf(source, parts)})$`, "u");

/** Runs that answer numbers that they name. */
const namedYes = whole(
  "((Yes Mark*)? Lead (Lists|Set Mark* List) YesSaid Too?|(Yes Mark*)? Lead Given Mark* Spoken|Lead? Confirm (List|Set Mark* List)|(We|Art? (Person|Boss)+|Pron) Very* Confirmed It? List|Lead Please? Do List Very* (Good|So)|(Lead|ISay) Please? Treat (List) As A? Yes|Confirmed Mark+ List|Lead NoChange (In|At)+ List|Lead Please? Go (With|At) List|Ok At+ List Mark* Yeses|Lead Given At* All List|(Yes Mark*)? Please? Do List Very* (Good|So))",
);
const namedNo = whole(
  "(Lead (Lists|Set Mark* List) NoSaid|Lead Denied Mark* List|(Lead|ISay) Please? Treat List As A? No|Lead Denied At* All List|You Be Very* Good At+ List|Neither One Nor One Be Very* Good|Neither List (Be Very* Good|Mark* Noes))",
);
/** Runs that answer all questions. */
const setYes = whole(
  "((Yes Mark*)? Lead Set YesSaid|(Yes Mark*)? Lead Given Mark* Set|Confirm Set|Twice|Lead Please? Do Set Very* (Good|So)|(Good|Confirmed) (So|Very)* At+ All)",
);
const setNo = whole("(Lead Set NoSaid|Lead Denied Mark* Set)");
/** A sentence that says yes to the only question. Within a sentence it may confirm something else. */
const confirms = whole("Confirm It?|Confirm Art? (Word|Nm)+|(Good|Confirmed) (Good|So|Ours|Very)*");
/** Runs that answer the only question, or that repeat what is answered beside them. */
const bareYes = whole(
  "Yes Mark* The Word|((Yes Mark*)? (Lead|Mid)? Yeses (Ours|Sure)*|Yeses Mark* It Be|Yes (AndN Yes)+|Lead? Mark* It? Right|It Be? So|(Lead|Mid)? Go|It Be HowTo|(Art? (Word|Name)) Right|It? NoSlip)",
);
const bareNo = whole("((Lead|Mid)? Noes|Neither|No (AndN No)+|It? (Wrong|Unfit)|It Be Bad)");
/** "4 too" */
const sameAgain = whole("(List Mark* (Too|The? Same)|So Be List)");

/** Reasons, which stand beside a yes. */
const because = whole(
  `Why (
    Sub Very* Be Very* NameOf
    |Be Very* NameOf
    |(Own|My) Named (OfWhom|HowTo)*
    |Det* Named OfWhom+
    |The? Word Mark* (It? Be)? NameOf
    |Sub Be Very* Art? In? The? Nation (Lang|Nm|Thing|Person)* (At Det* (Thing|Person|Nm)+)?
    |Art? (Person|Boss|Thing) Be (Nation|There)
    |Pron Be (In|At)? Nation
    |In The? Nation Lang? Mark* (We|It|Pron|Person) Very* (Call|Be Term|Be Good) (It|Thus)*
    |(It Be)? Very* HowTo
    |Who Very* Call Obj? Very* Thus+ Ours?
    |(It Be)? Very* Good Term Thus*
    |(Sub|Art? (Thing|Person)) Very* Be Very* Term (The Word)? Thus* (Honour Det* (Fair|Old|Nation)* (Person|Thing)+)?
    |Sub Very* Right (In Nation)?
    |(Ours Mark?)? Right
    |Sub Be (A|My|Own) (Nation|Old|Fair)* (Thing|Person)+ (In Nation)?
    |Sub Be The? (Nation|Own) (Old|Fair)* (Thing|Person)+
    |Sub Be Not Nation
    |Sub? Honour Det* (Fair|Old|Nation)* (Person|Boss|Thing|Plan)+ ((Of|In) Det* (Person|Thing|Nation)+)?
    |It? NoSlip
    |It Be HowTo
    |(It|Who) (Saying|Per) Art? Plan
    |(It|Word|Art Word|Art Nm) Matches Art? Adj* (Thing|Person|Boss)* (Plan|Person|Boss)
    |Per Det* (Person|Boss|Plan|Thing|Pron|Sender)+ (When|With)*
    |Who Very* Call Obj
    |(Who|Art? Plan) ShowsIt
    |Odd
  )`,
);

/** What only goes on with a yes, or stands for itself. */
const echo = whole(
  "(Good|Confirmed|Ok)+ (So|Ours|Very|Good)*|All Good|NoChange|Sure|Please? Go|Ours|Term Thus+",
);

/** "Ditto", "a family name" */
const aside = whole(
  "Same|Not Nation|Fair+ (Word|Nm)+|(A|My|Own)? (Fair|Nation|Thing|Person)* Name+ OfWhom*|The (Thing|Person)* Name+ OfWhom*|(Too|Very|Old)* A? Nation (Lang|Nm|Thing|Person)? Too?|(Own|My) Person",
);

/** Reports of who was asked. They may stand before an answer too. */
const report = whole(
  `(And Mark*)? (
    (We|Art? (Person|Boss)+|Pron) Very* (Asked|Checked|Confirmed|Says) (It|All|Tell|With|At|In|Person|Boss|Art|Pron|Own|When|Plan|Very|Thing)*
    |Very* (Asked|Checked|Confirmed) Very* (It|Tell)? (With|At|In|Person|Boss|Art|Pron) (It|All|Tell|With|At|In|Person|Boss|Art|Pron|Own|When|Plan|Very|Thing)*
    |(We|Very)* Checked When*
    |We Very* (Asked|Checked) (It|Tell|At)? List (With|At|Art|Person|Boss|When|Pron)+
    |(We|Art? (Person|Boss)|Pron)? Very* (Asked|Checked|Confirmed|Says) (It|Tell|With|At|In|Person|Boss|Art|Pron|Own|When|Very)* Mark* And? (Art? (Person|Boss)|Pron|It) Saying (It|Word|Art Word|Art Nm)? (Right|Yes|Good)
    |Art? (Person|Boss)+ Saying (It|Word|Art Word|Art Nm)? (Right|Yes|Good|Ok)
    |Pron Saying (It|Word|Art Word|Art Nm)? (Right|Yes)
    |Per (Art? (Person|Boss)+|Pron|Sender) (When|With)*
    |Says Art? (Person|Boss)+
  )`,
);

/** What says nothing wherever it stands. */
const polite = whole("(Polite|Please|Smile|Sender|Boss)+");
/** What introduces answers. */
const introduces = whole(
  "Ours|(?!.*Confirm Art? Answer)(?=.*(Intro|Follows|Answer))(Please|Intro|ISay|Count|Style|Follows|Art|Answer|At|In|Of|Label|All|Be|We|Say|Mail|Confirm|You|Mark|So|There|And)+",
);

/** What a run of words says. */
export type Run =
  | { readonly what: "named" | "set" | "bare" | "confirms"; readonly is: boolean }
  | { readonly what: "same" | "aside" | "reason" | "echo" | "nothing" | "introduction" };

const units: readonly (readonly [RegExp, Run])[] = [
  [namedYes, { what: "named", is: true }],
  [namedNo, { what: "named", is: false }],
  [setYes, { what: "set", is: true }],
  [setNo, { what: "set", is: false }],
  [bareYes, { what: "bare", is: true }],
  [bareNo, { what: "bare", is: false }],
  [confirms, { what: "confirms", is: true }],
  [sameAgain, { what: "same" }],
  [because, { what: "reason" }],
  [echo, { what: "echo" }],
  [aside, { what: "aside" }],
  [report, { what: "nothing" }],
  [polite, { what: "nothing" }],
  [introduces, { what: "introduction" }],
];

export function unitsOf(words: readonly Token[]): Run[] {
  if (words.some(({ kind }) => kind === "Other")) return [];
  const run = words.map(({ kind }) => letterOf(kind)).join("");
  return units.flatMap(([pattern, unit]) => (pattern.test(run) ? [unit] : []));
}
