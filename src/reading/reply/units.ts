import { once } from "../../trade/once.ts";
import { letterOf, patternOf } from "./lexicon.ts";
import type { Token } from "./tokens.ts";

/*
 * What a run of words may be, by the kinds of its words: an answer, a reason, a report, or nothing. All patterns are
 * over one letter a kind (lexicon.ts).
 */

/** What a run of words says. */
export type Run =
  | { readonly what: "named" | "set" | "bare" | "confirms"; readonly is: boolean }
  | { readonly what: "same" | "aside" | "reason" | "echo" | "nothing" | "introduction" };

/**
 * The patterns of all units, each with what a run needs to be one, which is quickly seen. They are made for the first
 * reply, since that takes a third of a second.
 */
const units = once((): readonly (readonly [RegExp, RegExp, Run])[] => {
  const parts: Record<string, string> = {};
  /** Gives a pattern a name, by which later ones call it. */
  function part(name: string, source: string): void {
    parts[name] = patternOf(source, parts);
  }

  part("My", "(My|Your)");
  part("Be", "(Is|Are)");
  part("Art", "(The|A|My)");
  part("Nm", "(Name|Word)");
  part("Who", "((The|A|My)? (Boss|Person)|We|Pron|It)");
  part("Own", "((The|A|My)? Adj{0,3} (Boss|Person|Thing) Is?)");
  part("Sub", "(It? (Word|Nm)|It|All|Art? Nm)");
  part("Obj", "(It? (Word|Nm)|It|Pron|Art? (Word|Nm))");
  part("Det", "(Own|The|A|My|Nation)");
  part("Fair", "(Adj|Good|Adv)");
  part("Very", "(Adv|Sure|All|Too)");
  part("Thus", "(So|There|Very|In The? Nation Lang?|Years)");

  // Numbers: "2", "your question no. 2", "the second one", "(2)".
  part("Lab", "((The|A|Your)? (All|Too)? Label{1,2} Mark?)");
  part(
    "One",
    "(At+ The? Mark? Num|The? Num|(At|In){0,2} Lab (Num|Count)|(At|In){0,2} (The|My)? Nth (Label|Count)?|At+ Count)",
  );
  part("Bare", "(One|Count)");
  part("Tie", "(Mark|And|Thru)*");
  part("Tail", "((Of|In|At) Art (Mail|Answer))?");
  part("List", "(All? One (Tie One)* Tail)");
  part("Spoken", "(All? One ((Tie|AndN) One)* Tail)");
  part("Lists", "(All? Bare (Tie Bare)* Tail)");
  part(
    "Set",
    "((At|In){0,2} Of? (The|My)? All (Of? (The|My|It|Pron))? (Num|Count)? (Label|Word|Answer|Name){0,3}|(At|In){0,2} The Count (Label|Word|Name|Of (It|Pron))?)",
  );

  part("Yeses", "((A|The)? Yes (Mark* (And|Mark)* A? Yes)*)");
  part("Noes", "((A|The)? No (Mark* A? No)*)");
  part("Right", "(Be (Very|So){0,3} Art? Fair{0,3} (Good|Confirmed|Ok) (Nm|So|Ours|Very|There|In Nation)*)");
  part("Call", "(Spell|Called)");
  part("Term", "(Spelt|Called)");
  part(
    "HowTo",
    "((How|The Nm) Who Very{0,3} Call Obj? (Thus|Ours){0,3}|How It Very{0,3} Be Very{0,3} Term Thus{0,3})",
  );
  part("Wrong", "(Be Very{0,3} (A|My|The)? Adv* Bad)");
  part("Unfit", "(Be Not Very{0,3} (Good|Confirmed|Ok) So?)");
  part("Saying", "((Says|Confirmed|Checked) When* It?)");

  /** What stands before the number in its sentence. */
  part(
    "Lead",
    "((Sure|Adv) Mark*|Ours Mark*|(Art? Answer (Be|Mark|Follows|And|In|At|Of){0,4})|(Confirm (?!Art? Answer)|ISay|We Adv* (Say|Answer) It?|We Say) Mark*|Art? Word{1,2} Raised{0,2} (In|At|Of){0,2}|(And|So) Mark*|(At|In|With) (The|My|It) Mail Mark*|Art? (Boss|Person) Saying Mark*|Pron Saying Mark*|In? Follows Mark*){0,4}",
  );
  /** What stands between a number and its answer. */
  part(
    "Mid",
    "((Mark|Follows)* Very{0,3} Mark* (It? Be|Art? Answer Be?|We Adv* (Say|Answer)|Art? (Boss|Person) Saying|Pron Saying)? Mark* Very{0,3} Mark*)",
  );

  part(
    "YesSaid",
    "((Mid Yeses Ours{0,2}|Mark* All? It? Right|Mark* Ok Good+|(Mark+ Art?|Art) (Word|Name) Right|Mark* Very{0,3} (Good|Confirmed) (Good|So|Ours|Very)*|Mark* It? Be HowTo|Mark* It? NoSlip|Mark* (Confirm|Please? Go)|Mark* Be Very{0,3} Per Art? (Person|Boss){1,3} (When|With)*|With Yeses) (Mark* At{0,2} All)?)",
  );
  part(
    "NoSaid",
    "((Mid Noes|Mark* All? It? (Wrong|Unfit)|Mark* Very{0,3} (A|My)? Bad|Mark* Not (Good|Confirmed)) (Mark* At{0,2} All)?)",
  );
  part("Given", "((It Be)? Very{0,3} Yeses (Ours|Please|Sure|Polite|Good|Boss)* (Mark|And)*)");
  part("Denied", "((It Be)? Very{0,3} Noes (Ours|Polite)* Mark*)");

  /** Why a word is meant so. */
  part("Named", "(Fair{0,3} Nation{0,2} Lang? (Thing|Person){0,3} Nm{1,3})");
  part(
    "OfWhom",
    "((Of|At|In) Det{0,3} Count? Fair{0,3} Nation{0,2} (Boss|Person|Thing){1,3} (Of Det{0,3} Fair{0,3} (Boss|Person|Thing){1,3})? (Mark? The Word)?)",
  );
  part("NameOf", "(Det{0,3} Named (OfWhom|At Nm){0,2} (HowTo)? (In Nation)? Years? There?)");
  part("Why", "((Because Mark*)? Mark*)");

  const whole = (source: string): RegExp => new RegExp(`^(?:${patternOf(source, parts)})$`, "u");

  /** Runs that answer numbers that they name. */
  const namedYes = whole(
    "((Yes Mark*)? Lead (Lists|Set Mark* List) YesSaid (Too|Same)?|(Yes Mark*)? Lead Given Mark* Spoken|Lead? Confirm (List|Set Mark* List)|(We|Art? (Person|Boss){1,3}|Pron) Very{0,3} Confirmed It? List|Lead Please? Do List Very{0,3} (Good|So)|(Lead|ISay) Please? Treat (List) As A? Yes|Confirmed Mark+ List|Confirmed (?=At) List|Lead NoChange (In|At)+ List|Lead Please? Go (With|At) List|Ok At+ List Mark* Yeses|Lead Given At{0,2} All Mark* List|(Yes Mark*)? Please? Do List Very{0,3} (Good|So))",
  );
  const namedNo = whole(
    "(Lead (Lists|Set Mark* List) NoSaid|Lead Denied Mark* List|(Lead|ISay) Please? Treat List As A? No|Lead Denied At{0,2} All Mark* List|You Be Very{0,3} Good At+ List|Neither One Nor One Be Very{0,3} Good|Neither List (Be Very{0,3} Good|Mark* Noes))",
  );
  /** Runs that answer all questions. */
  const setYes = whole(
    "((Yes Mark*)? Lead Set YesSaid|(Yes Mark*)? Lead Given Mark* Set|Confirm Set|Twice|Lead Please? Do Set Very{0,3} (Good|So)|(Good|Confirmed) (So|Very)* At+ All)",
  );
  const setNo = whole("(Lead Set NoSaid|Lead Denied Mark* Set)");
  /** A sentence that says yes to the only question. Within a sentence it may confirm something else. */
  const confirms = whole("Confirm It?|Confirm Art? (Word|Nm){1,3}|(Good|Confirmed) (Good|So|Ours|Very)*");
  /**
   * Runs that answer the only question, or that repeat what is answered beside them. A bare "yes, it is" is none: it may
   * mean that a word is misspelt.
   */
  const bareYes = whole(
    "Yes Mark* The Word|((Yes Mark*)? (Lead|Mid)? Yeses (Ours|Sure|Too)*|Yeses At+ (Your|The|My) Label{1,2}|Yes (AndN Yes)+|Lead? Mark* It? Right|It Be? So|(Lead|Mid)? Go|It Be HowTo|(Art? (Word|Name)) Right|It? NoSlip)",
  );
  const bareNo = whole("((Lead|Mid)? Noes|Neither|No (AndN No)+|It? (Wrong|Unfit)|It Be Bad)");
  /** "4 too" */
  const sameAgain = whole(
    "((And|Mark)* List Mark* (Is|Are)? (Too|The? Same|Same Ours?)|So Be List|The? Same Mark* (At|Thru)* List|The? Same Be At+ List)",
  );

  /** Reasons, which stand beside a yes. */
  const because = whole(
    `Why (
      Sub Very{0,3} Be Very{0,3} NameOf
      |Sub Be It OfWhom{1,2}
      |Be Very{0,3} NameOf
      |(Own|My) Named (OfWhom|HowTo){0,2}
      |Det{0,3} Named OfWhom{1,2}
      |The? Word Mark* (It? Be)? NameOf
      |Sub Be Very{0,3} Art? In? The? Nation (Lang|Nm|Thing|Person)* (At Det{0,3} (Thing|Person|Nm)+)?
      |Art? (Person|Boss|Thing) Be (Nation|There)
      |Pron Be (In|At)? Nation
      |In The? Nation Lang? Mark* (We|It|Pron|Person) Very{0,3} (Call|Be Term|Be Good) (It|Thus)*
      |(It Be)? Very{0,3} HowTo
      |Who Very{0,3} Call Obj? Very{0,3} Thus+ Ours?
      |(It Be)? Very{0,3} Good Term Thus{0,3}
      |(Sub|Art? (Thing|Person)) Very{0,3} Be Very{0,3} Term (The Word)? Thus{0,3} (Honour Det{0,3} (Fair|Old|Nation)* (Person|Thing){1,3})?
      |Sub Very{0,3} Right (In Nation)?
      |(Ours Mark?)? Right
      |Sub Be (A|My|Own) (Nation|Old|Fair)* (Thing|Person){1,3} (In Nation)?
      |Sub Be The? (Nation|Own) (Old|Fair)* (Thing|Person){1,3}
      |Sub? Honour Det{0,3} (Fair|Nation)* (Person|Boss|Thing|Plan){1,3} ((Of|In) Det{0,3} (Person|Thing|Nation){1,3})?
      |It? NoSlip
      |It Be HowTo
      |(It|Who) (Saying|Per) Art? Plan
      |(It|Word|Art Word|Art Nm) Matches Art? Adj{0,3} (Thing|Person|Boss)* (Plan|Person|Boss)
      |(Sub Be Very{0,3})? Per Det{0,3} (Person|Boss|Plan|Thing|Pron|Sender){1,4} (When|With)*
      |Who Very{0,3} Call Obj
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
    "Same|Fair+ (Word|Nm){1,3}|(A|My|Own)? (Fair|Nation|Thing|Person){0,4} Name{1,2} OfWhom{0,2}|The (Thing|Person){0,3} Name{1,2} OfWhom*|(Too|Very|Old)* A? Nation (Lang|Nm|Thing|Person)? Too?|(Own|My) Person",
  );

  /** Reports of who was asked. They may stand before an answer too. */
  const report = whole(
    `(And Mark*)? (
      (We|Art? (Person|Boss){1,3}|Pron) Very{0,3} (Asked|Checked|Confirmed|Says) (It|All|Tell|With|At|In|Person|Boss|Art|Pron|Is|Adj|When|Plan|Very|Thing)*
      |Very{0,3} (Asked|Checked|Confirmed) Very{0,3} (It|Tell)? (With|At|In|Person|Boss|Art|Pron) (It|All|Tell|With|At|In|Person|Boss|Art|Pron|Is|Adj|When|Plan|Very|Thing)*
      |(We|Very)* (Checked|Asked) When*
      |We Very{0,3} (Asked|Checked) (It|Tell|At)? List (With|At|Art|Person|Boss|When|Pron)+
      |(We|Art? (Person|Boss)|Pron)? Very{0,3} (Asked|Checked|Confirmed|Says) (It|Tell|With|At|In|Person|Boss|Art|Pron|Is|Adj|When|Very)* Mark* And? (Art? (Person|Boss)|Pron|It) Saying (It|Word|Art Word|Art Nm)? (Right|Yes|Good)
      |Art? (Person|Boss){1,3} Saying (It|Word|Art Word|Art Nm)? (Right|Yes|Good|Ok)
      |Pron Saying (It|Word|Art Word|Art Nm)? (Right|Yes)
      |Per (Art? (Person|Boss){1,3}|Pron|Sender) (When|With)*
      |Says Art? (Person|Boss){1,3}
    )`,
  );

  /** What says nothing wherever it stands. */
  const polite = whole("(Polite|Please|Smile|Sender|Boss)+");
  /** What introduces answers. */
  const introduces = whole(
    "Ours|(?!.*Confirm Art? Answer)(?=.*(Intro|Follows|Answer))(Please|Intro|ISay|Count|Style|Follows|Art|Answer|At|In|Of|Label|All|Be|We|Say|Mail|Confirm|You|Mark|So|There|And)+",
  );

  const has = (kinds: string): RegExp => new RegExp(patternOf(`(${kinds})`), "u");
  const number = has("Num|Count|Nth");
  const set = has("All|Count|Twice");
  const any = /(?:)/u;

  return [
    [number, namedYes, { what: "named", is: true }],
    [number, namedNo, { what: "named", is: false }],
    [set, setYes, { what: "set", is: true }],
    [set, setNo, { what: "set", is: false }],
    [has("Yes|Good|Confirmed|Ok|Go|How|The|So|NoSlip"), bareYes, { what: "bare", is: true }],
    [has("No|Bad|Not|Neither"), bareNo, { what: "bare", is: false }],
    [has("Confirm|Good|Confirmed"), confirms, { what: "confirms", is: true }],
    [number, sameAgain, { what: "same" }],
    [any, because, { what: "reason" }],
    [any, echo, { what: "echo" }],
    [any, aside, { what: "aside" }],
    [has("Asked|Checked|Confirmed|Says|Per"), report, { what: "nothing" }],
    [any, polite, { what: "nothing" }],
    [has("Intro|Follows|Answer|Ours"), introduces, { what: "introduction" }],
  ];
});

/** In words. */
const longestUnit = 20;

/** All that a run of words may be. */
export function unitsOf(words: readonly Token[]): Run[] {
  if (words.length > longestUnit || words.some(({ kind }) => kind === "Other")) return [];
  const run = words.map(({ kind }) => letterOf(kind)).join("");
  return units().flatMap(([needs, pattern, unit]) => (needs.test(run) && pattern.test(run) ? [unit] : []));
}
