import { describe, expect, test } from "vitest";
import { answersBeside } from "../../../src/reading/reply/answers-beside.ts";
import type { Statement } from "../../../src/trade/statement.ts";
import { askedSalona } from "./asked-salona.ts";
import { plainly, read } from "./read-reply.ts";

describe("an answer in a sentence", () => {
  test.each<[string, number[], number[]?]>([
    ["The answer to 3 is yes.", [3]],
    ["Answer to 2 is YES.\nAnswer to 3 is NO.", [2], [3]],
    ["The answer to 2 is yes and the answer to 3 is yes.", [2, 3]],
    ["For 3 the answer is yes.", [3]],
    ["Regarding question 3, yes please leave it.", [3]],
    ["As for no. 3: yes, leave it like that.", [3]],
    ["In answer to your question 3: YES, the wording is as intended.", [3]],
    ["In reply to your message, 3 yes", [3]],
    ["I can confirm that 3 is correct.", [3]],
    ["Confirmed - 3 YES", [3]],
    ["I spoke with the customer and 3 is a YES.", [3]],
    ["Just checked with the architect, 2 and 3 are meant as they stand.", [2, 3]],
    ["Yes, 3 is meant as it stands.", [3]],
    ["Yes to 2 and yes to 3.", [2, 3]],
    ["Hi there, 2 and 3 are all YES.", [2, 3]],
    ["Hi Burin, 3 yes, cheers, D.", [3]],
    ["3 yes Dana", [3]],
    ["3 yes thanks guys", [3]],
    ["2 and 3 the answer is YES", [2, 3]],
    ["Neither 2 nor 3 is meant as it stands.", [], [2, 3]],
    ["No 2: yes\nNo 3: no", [2], [3]],
    ["Both are meant as they stand: 2 YES, 3 YES.", [2, 3]],
    ["Question #3: YES", [3]],
    ["Re: question 3 - yes", [3]],
    ["3 => YES", [3]],
    ["3 YES :)", [3]],
    ["3 is a yes from us", [3]],
    ["Please note that 3 is YES.", [3]],
    ["Answers: 2 YES, 3 YES", [2, 3]],
    ["Please find below our answers.\n\n2 YES\n3 YES", [2, 3]],
    ["As requested:\n3 YES", [3]],
    ["Yes both", [2, 3]],
    ["2 NO - my bad\n3 YES", [3], [2]],
  ])("%j is understood", (text, yes, no) => {
    expect(read(text)).toEqual(plainly(yes, no));
  });

  test.each([
    "The answer to 3 is yes if the architect agrees.",
    "The answer to 3 is yes, I believe.",
    "The answer to 3 is not yes.",
    "The answer to 3 will be yes.",
    "The answer to 3 was yes.",
    "Is the answer to 3 yes?",
    "For 3 the answer is yes and no.",
    "Regarding question 3, yes please leave it out.",
    "Regarding question 3, yes please leave it blank.",
    "3 yes leave it with me",
    "3 yes leave it to the architect",
    "In answer to your question 3: YES, the wording is as intended once the board has met.",
    "I can't confirm that 3 is correct.",
    "I cannot confirm 3 yes",
    "I can confirm that 3 is correct only for the lobby.",
    "Confirmed - 3 YES unless I call",
    "I spoke with the customer and 3 may be a YES.",
    "The customer said 3 is a YES but I doubt it.",
    "Just checked with the architect, 2 and 3 are meant as they stood.",
    "Yes, 3 should be meant as it stands.",
    "Yes, 3 is wrong.",
    "Answers: 3 YES if it fits",
    "As requested by nobody:\n3 YES",
    "3 is a yes from us, a no from the owner",
    "Yes to 2 and 3 another time.",
    "No 3 yes",
    "Neither 2 nor 3 yes",
    "Both are meant as they stand: 2 YES, 3 NO.",
    "3 yes Dana thinks",
    "3 yes not",
  ])("%j is left to a person, and no YES", (text) => {
    const { yes, person } = read(text);
    expect({ yes: yes.includes(3), person }).toEqual({ yes: false, person: true });
  });
});

describe("a reason beside an answer", () => {
  test.each([
    "3 YES (it's the owner's surname)",
    "3 YES (per the customer, it's the name of the wing)",
    "3 YES (I asked the architect, it really is spelled that way)",
    "3 YES. That's the client's spelling.",
    "3 YES\nThat's how they spell it.",
    "3 YES - Salona is the name of the room",
    "3 YES — that's their brand name",
    "3 yes, checked with the client",
    "3 yes, as per the approved drawings",
    "3 yes its a family name",
    "3 YES, architect approved",
    "3 YES, no changes needed",
    "3 YES - do not change it",
    "3 yes, it's not a typo",
    "3 yes, it's spelled that way on the drawings",
    "3 YES (keep it)",
    "3 YES, it is how it is spelled",
    "3 YES. I checked it against the drawings this morning.",
  ])("%j is understood", (text) => {
    expect(read(text)).toEqual(plainly([3]));
  });

  test.each([
    "3 YES (it's the owner's former name)",
    "3 YES (it's the wrong name)",
    "3 YES (not)",
    "3 YES (if you say so)",
    "3 YES (joking)",
    "3 YES ;)",
    "3 YES, architect will approve",
    "3 YES, once the architect approved",
    "3 YES, architect approved the other one",
    "3 YES, no changes except the E",
    "3 YES, do not change it back yet",
    "3 YES, it is a typo",
    "3 YES, it's not the right name",
    "3 YES keep it white",
    "3 YES (I asked the architect to change it)",
    "3 YES (ask the architect)",
    "3 YES. That's what I would say if I were rich.",
    "3 YES, the spelling",
    "3 YES, that's how they spelled it before",
    "3 YES - it's the name of the other room",
    "3 YES, so far",
    "3 YES, pending approval",
    "3 YES. This was for the other job.",
    "3 YES\nThat's not how they spell it.",
    "3 YES (with the E at the end)",
    "3 YES, per the customer it is SALON",
    "3 yes in your dreams",
  ])("%j is left to a person, and no YES", (text) => {
    const { yes, person } = read(text);
    expect({ yes, person }).toEqual({ yes: [], person: true });
  });

  test.each(["That's the client's spelling.", "It's the owner's surname", "Thanks for checking."])(
    "%j alone answers nothing",
    (text) => {
      expect(read(text, { open: [3], others: 0 })).toEqual({ yes: [], no: [], person: true });
    },
  );
});

describe("an answer below its number", () => {
  test("is one with it", () => {
    expect(read("2:\nYES\n3:\nNO")).toEqual(plainly([2], [3]));
    expect(read("2.\n\nyes, that's their name\n\n3.\n\nyes")).toEqual(plainly([2, 3]));
  });
  test.each(["2:\nYES if it fits", "2:\nYES\nunless he calls", "2:\n3:\nYES", "2:\nSALON\nYES"])(
    "but not %j",
    (text) => {
      const { yes, person } = read(text);
      expect({ yes: yes.includes(2), person }).toEqual({ yes: false, person: true });
    },
  );
});

describe("both", () => {
  test("are the two questions, whatever there is to fix", () => {
    expect(read("Yes to both.")).toEqual(plainly([2, 3]));
    expect(read("Yes to both", { others: 2 })).toEqual(plainly([2, 3]));
    expect(read("No to both, sorry, my typo.")).toEqual(plainly([], [2, 3]));
  });
  test("are unclear where other two may be meant, or where there are not two", () => {
    expect(read("Both are right", { others: 2 })).toEqual({ yes: [], no: [], person: true });
    expect(read("Yes to both", { open: [2, 3, 4] })).toEqual({ yes: [], no: [], person: true });
    expect(read("Yes to both", { open: [3] })).toEqual({ yes: [], no: [], person: true });
    expect(read("Yes to one of both")).toEqual({ yes: [], no: [], person: true });
    expect(read("All three yes", { others: 0 })).toEqual({ yes: [], no: [], person: true });
  });
});

describe("a promised sheet", () => {
  test.each<[string, number[], number[]?]>([
    ["3 yes. Will fix the rest and resend tonight.", [3]],
    ["Item 3, yes. We will resend the other one.", [3]],
    ["Yes to both. We'll sort out number 1 and send you the sheet again.", [2, 3]],
    ["2 YES\n3 NO\n\nNew sheet for 3 to follow, along with 1.", [2], [3]],
    ["2 YES. I will send a new sheet for 3.", [2], [3]],
    ["No to both. Corrected sheets on the way.", [], [2, 3]],
  ])("%j is for what is to fix", (text, yes, no) => {
    expect(read(text)).toEqual(plainly(yes, no));
  });

  test("binds a yes that leaves nothing to fix, or that it names", () => {
    for (const text of ["3 YES. I will send a new sheet.", "3 YES. I will send a new sheet for 3."])
      expect(read(text, { open: [3], others: 0 })).toMatchObject({ yes: [], person: true });
    expect(read("3 YES. Correct it.")).toMatchObject({ yes: [] });
    expect(read("3 YES. We will send a red one.")).toMatchObject({ yes: [], person: true });
  });
});

describe("small talk", () => {
  test.each([
    "Sorry for the delay, was on site all day with no signal.\n\n3 YES",
    "Sorry I missed this! 3 yes",
    "Thank you for going through it so carefully.\n\n3 YES",
    "3 YES\n\nThanks for checking.",
    "Been on the road all day.\n3 yes",
    "Goedemorgen,\n\n3 YES",
  ])("%j binds nothing", (text) => {
    expect(read(text)).toEqual(plainly([3]));
  });

  test.each([
    "Sorry, I was looking at another drawing.\n3 YES",
    "Sorry, I thought of the other job. 3 YES",
    "My boss would have written:\n3 YES",
    "My partner will say\n3 YES",
    "Just a test.\n3 YES",
    "3 YES\n\nSorry, was on the wrong job.",
    "3 YES\n\nWe are not there yet.",
    "3 YES\n\nThanks for waiting until we decide.",
    "3 YES\n\nThanks for making it red.",
    "3 YES\n\nThanks for using SALON.",
    "I am guessing.\n3 YES",
    "Was just copying the line.\n3 YES",
    "3 YES\n\nNOT",
    "3 YES\n\n?",
    "3 YES\n\ncorrected",
    "3 YES. To follow.",
    "3 YES. Thanks, NOT",
    "3 YES, thanks if it fits",
    "3 YES, thanks tentatively",
    "3 YES. Ta, Dana I think",
    "3 YES (it's the name of the wing hold)",
    "Yes to both. We will send number 1 again no",
    "Hello,\n\n3 YES\n\nSalon it is",
    "As far as I know.\n3 YES",
  ])("%j is left to a person, and no YES", (text) => {
    const { yes, person } = read(text);
    expect({ yes, person }).toEqual({ yes: [], person: true });
  });
});

describe("a footer that speaks of orders", () => {
  const signed = (footer: string): string =>
    `3 YES\n\nDana Whitlock\nWhitlock Controls\n555-0142\n\n${footer}`;
  test.each([
    "All orders are subject to our standard terms of purchase.",
    "Orders over $500 need a purchase order number.",
    "No order is accepted until we have confirmed it in writing. Prices may change without notice.",
    "No order is binding on Whitlock Controls unless issued on a purchase order form.",
    "Any order, variation or instruction must be confirmed by our Commercial Department before it binds the company.",
    "Whitlock Controls: same-day pick-up on all stock orders placed by 2 pm!",
    "For new orders e-mail orders@whitlock.example; for the status of your order call 555-0181.",
    "We appreciate your orders! Ask me about our engraving specials.",
    "Whitlock - “Solar? Yes, we do that!”",
    "m: 555-0143",
    "+1 555 0163",
    "Dock Road, Harlow Quay",
  ])("%j binds nothing below a name", (footer) => {
    expect(read(signed(footer))).toEqual(plainly([3]));
  });

  test.each([
    "All orders on hold until Monday.",
    "All orders must wait until I call.",
    "This order needs a purchase order number first.",
    "No order yet.",
    "Order in writing to follow, do nothing before.",
    "Orders over $500 need my approval, this one too.",
    "Prices over $500: stop.",
    "Same-day: hold it.",
    "All orders cancelled, in writing too.",
  ])("%j is left to a person, and no YES", (footer) => {
    const { yes, person } = read(signed(footer));
    expect({ yes, person }).toEqual({ yes: [], person: true });
  });

  test("binds where it stands above a name, since it may be said of this order", () => {
    expect(read("3 YES\n\nOrders over $500 need a purchase order number.\n\nDana")).toMatchObject({
      yes: [],
      person: true,
    });
  });
});

test("below a name that nobody knows stands a firm, as below a good-bye", () => {
  const firm = "Goldfinch Brothers - Will Call / Counter";
  expect(read(`3 YES\n\nMarta\n${firm}`)).toEqual(plainly([3]));
  expect(read(`3 YES\n\nThanks\n${firm}`)).toEqual(plainly([3]));
  expect(read(`3 YES\n\n${firm}`)).toMatchObject({ yes: [], person: true });
});

describe("what praises a find, or takes a YES back below a name, leaves it to a person", () => {
  test.each([
    "3 YES\n\nTom\n\nPS the owner signs off Friday.",
    "Good catch. Yes.",
    "Well spotted, yes",
    "3 yes, thanks for catching that",
    "3 yes thanks, that is our error",
    "YES sorry my typo",
    "3 YES\nDisregard.",
    "Hello there,\n3 yes\nI will ring you about it.",
    "3 YES\nWould rather have SALON.",
    "3 YES (should read SALON)",
    "3 YES as amended",
    "3 YES from me, check with Ann too",
    "3 YES\nTom\nTerms: no cutting before written approval of this legend.",
    "3 YES\n--\nTom\nThis legend is not approved.",
  ])("%j", (text) => {
    expect(read(text, { open: [3], others: 0 })).toEqual({ yes: [], no: [], person: true });
  });
});

describe("points named in words", () => {
  test.each<[string, number[], number[]?]>([
    ["three yes", [3]],
    ["Three: yes.", [3]],
    ["two and three are a yes", [2, 3]],
    ["yes to three", [3]],
    ["two no, three yes", [3], [2]],
  ])("%j", (text, yes, no = []) => {
    expect(read(text)).toEqual(plainly(yes, no));
  });

  test.each<[string, number[], number[]?]>([
    ["yes to the first, no to the second", [2], [3]],
    ["The last one is yes.", [3]],
    ["Yes and yes.", [2, 3]],
    ["no, no", [], [2, 3]],
  ])("%j where nothing but two questions stood in the answer", (text, yes, no = []) => {
    expect(read(text, { others: 0 })).toEqual(plainly(yes, no));
  });

  test.each(["yes to the first, no to the second", "Yes and yes.", "The last one is yes."])(
    "%j is for a person where a point to fix stood beside them",
    (text) => {
      expect(read(text)).toEqual({ yes: [], no: [], person: true });
    },
  );

  test.each(["Yes and no.", "yes, no", "yes, yes, yes", "the first name is yes"])(
    "%j is for a person, since it may mean something else",
    (text) => {
      expect(read(text, { others: 0 })).toEqual({ yes: [], no: [], person: true });
    },
  );

  test("Please proceed says yes to the only question", () => {
    expect(read("Please proceed.", { open: [3], others: 0 })).toEqual(plainly([3]));
    expect(read("Please proceed.", { open: [3], others: 1 })).toMatchObject({ yes: [], person: true });
    expect(read("Please proceed.", { others: 0 })).toMatchObject({ yes: [], person: true });
  });
});

describe("what stands around an answer in its sentence, or beside it", () => {
  test.each([
    "3 YES - it's an old building",
    "3 YES (sorry for the late reply, was on site all day)",
    "3 YES, everybody here says it like that.",
    "3 YES. It's a Finnish word.",
    "3 YES. The owner is Croatian.",
    "3 yes, I know it looks wrong",
    "3 YES\n\nGreat service!\n\nDana",
    "3 YES\n\nlol you guys are thorough\n\nDana",
    "It's been a crazy week.\n3 YES",
    "Hey, on the ladder so short: 3 YES",
  ])("%j", (text) => {
    expect(read(text)).toEqual(plainly([3]));
  });

  test.each([
    "3 YES. It is salon in the drawing.",
    "3 YES. The owner likes salon better.",
    "3 YES. That was the old tenant.",
    "3 YES. I am in two minds about it.",
    "3 YES. It has two Ls.",
    "3 yes, it looks wrong",
    "3 yes, checked with the new guy",
    "three cheers yes",
    "3 YES: it is a Finnish word for salon",
    "3 YES. You are the expert.",
    "3 YES. It is up to you.",
    "3 YES - for now",
    "3 YES (I hope)",
    "3 YES. Delay a week.",
    "3 YES. Better late.",
    "3 YES\n\nBy Friday.\n\nDana",
    "3 YES\n\nSilver\n\nDana",
    "3 YES\n\nExpress.\n\nDana",
    "Yes, I'll get back to you tomorrow.",
  ])("%j is for a person, and no YES", (text) => {
    expect(read(text)).toEqual({ yes: [], no: [], person: true });
  });
});

describe("more ways to answer", () => {
  test.each<[string, number[], number[]?]>([
    ["3 - yes please, as drawn", [3]],
    ["3 - Yes, confirmed with the ward.", [3]],
    ['My reply is "3 YES".', [3]],
    ["Re: your question 3\nYES", [3]],
    ["Yes please, engrave number 3 exactly as it stands.", [3]],
    ["Regarding no. 3: yes, that is what the client wants on the plate.", [3]],
    ["3 NO - will send a corrected sheet.", [], [3]],
    ["3 YES, it is meant as it stands. Number 1 was my mistake, new sheet coming.", [3]],
    ["We confirm that the matters raised in points 2 and 3 of your answer are meant as they stand.", [2, 3]],
    ["Sure thing:\n\n3 YES", [3]],
    ["3 → YES", [3]],
    ["3: That is how it should be.", [3]],
    ["3 YES because that's how they spell it", [3]],
    ["Thank you for your message, 3 YES.", [3]],
    ["After checking with the client: 3 YES", [3]],
    ["Client says yes to 3", [3]],
    ["3 yes. 2 no. Corrected sheet for 2 coming this afternoon.", [3], [2]],
    ["2 is right as is. 3 is a typo, corrected sheet to follow.", [2], [3]],
    ["2 no sorry fat fingers, will resend", [], [2]],
    ["Sehr geehrte Damen und Herren,\n\n3 JA\n\nMit freundlichen Grüßen\n\ni. A. Katrin Osterloh", [3]],
    ["3 YES\n\nCordialement\nBastien Morel\n12 quai des Brumes, 29999 Port-Exemple", [3]],
    ["3 YES\n\nRegards\nBastien Morel\nKVK 55501999\n555-0161 direct | 555-0160 main", [3]],
  ])("%j", (text, yes, no = []) => {
    expect(read(text)).toEqual(plainly(yes, no));
  });

  test.each([
    "3 YES\nThat was my mistake, sending a new one.",
    "3 - yes please change it",
    "Yes please, engrave number 3 exactly as in the drawing.",
    "Re: your question 3\nYES if the owner signs",
    "3 YES\n\nSILVER 55501",
  ])("%j is for a person, and no YES", (text) => {
    expect(read(text)).toEqual({ yes: [], no: [], person: true });
  });
});

describe("a no that may mean that nothing is wrong", () => {
  test.each([
    "2 yes 3 no leave it like it is",
    "3 no, it stays",
    "3 NO it is meant so",
    "3 no its right",
    "3 NO, it's a family name",
  ])("%s", (text) => {
    expect(read(text)).toEqual({ yes: [], no: [], person: true });
  });

  test("what is said of the sheet, or of another point, leaves it a no", () => {
    expect(read("3 NO - corrected sheet attached, it is right now")).toEqual(plainly([], [3]));
    expect(read("3 no, 2 is right")).toEqual(plainly([2], [3]));
  });
});

describe("a sentence that a program has broken goes on in the next line", () => {
  /** A line of so many characters that begins and ends so. */
  const line = (length: number, begins: string, ends: string): string =>
    begins.padEnd(length - ends.length) + ends;
  test.each([
    ["where the line has 50 characters", line(50, "2 and 3", "are both"), "right as they stand."],
    ["in front of a number, behind a word that leads to it", line(50, "Thanks,", "yes to"), "2 and 3."],
  ])("%s", (_, ...lines) => {
    expect(read(lines.join("\n"))).toEqual(plainly([2, 3]));
  });

  test.each([
    ["where it has 49", line(49, "2 and 3", "are both"), "right as they stand."],
    ["where it has 49, in front of a number", line(49, "Thanks,", "yes to"), "2 and 3."],
    ["where it ends in a point", line(50, "2 and 3", "are both."), "right as they stand."],
    ["where a capital follows", line(50, "2 and 3", "are both"), "Right as they stand."],
    ["where a number follows another word", line(50, "Thanks,", "yes there"), "2 and 3."],
  ])("but not %s", (_, ...lines) => {
    expect(read(lines.join("\n"))).toMatchObject({ person: true });
  });
});

describe("lines that answer all questions in turn", () => {
  test.each<[string, number[], number[]?]>([
    ["yes\nyes", [2, 3]],
    ["Hello,\n\nyes\nno, sheet attached\n\nDana\n555-0142", [2], [3]],
  ])("%j name no numbers; what stands below them may", (text, yes, no) => {
    expect(read(text, { others: 0 })).toEqual(plainly(yes, no));
  });

  test.each([
    ["a number above them", "2 of us say\nyes\nyes", {}],
    ["a line between them", "yes\n\nThanks\nyes", {}],
    ["more lines than questions", "yes\nyes\nyes", {}],
    ["a quoted point above them", "> 2. SALONA\nyes\nyes", {}],
    ["a point to mend", "yes\nyes", { others: 1 }],
  ])("but with %s nobody knows what they are for", (_, text, more) => {
    expect(read(text, { others: 0, ...more })).toEqual({ yes: [], no: [], person: true });
  });
});

describe("an answer beside what else is said", () => {
  const said = (words: string, where: "text" | "subject" = "text"): Statement => ({
    kind: "said",
    where,
    words,
  });
  const answer = (words: string): Statement => ({ kind: "said", where: "answer", words });
  const counts: Statement = { kind: "counts", counts: [{ of: "plate", number: 2 }], words: "2 plates" };
  const answered = (
    text: string,
    all: readonly Statement[],
    { open = [3], bringsSheets = false } = {},
  ): { yes: number[]; lines: string[]; statements: readonly Statement[] } => {
    const { answers, statements } = answersBeside(
      text,
      { ...askedSalona, open, bringsSheets },
      (understood) => all.filter((one) => !("words" in one && understood.has(one.words))),
    );
    return { yes: [...answers.yes], lines: [...answers.lines], statements };
  };
  const told = (text: string, ...all: Statement[]): readonly Statement[] => answered(text, all).statements;

  test("is told with it, and each other line as it is", () => {
    const red = said("Make it red.");
    expect(told("3 YES\nMake it red.", said("3 YES"), red)).toEqual([answer("3 YES"), red]);
    expect(told("3 YES\nMake it red.", said("3 YES"))).toEqual([answer("3 YES … Make it red.")]);
    expect(told("Make it red.", red)).toEqual([red]);
    expect(told("3 YES\nMake it red.", red)).toEqual([red]);
  });

  test("is no words like it that stand elsewhere", () => {
    const subject = said("3 YES", "subject");
    expect(told("3 YES\nMake it red.", subject, said("3 YES"))).toEqual([
      answer("3 YES … Make it red."),
      subject,
    ]);
    expect(told("3 YES\nMake it red.", subject)).toEqual([subject]);
  });

  test("is told in 300 characters, and a line that nothing else tells in 160", () => {
    const long = "Make it red. ".repeat(30).trim();
    expect(told(`3 YES\n${long}`, said("3 YES"))).toEqual([answer(`3 YES … ${long}`.slice(0, 300))]);
    expect(told(`3 YES\n${long}`)).toEqual([said(long.slice(0, 160))]);
  });

  test("stands beside counts and other points, and beside nothing else", () => {
    const words = "4: make it SALON";
    const other = said(words);
    expect(answered("3 YES", [counts])).toMatchObject({ yes: [3], statements: [counts] });
    expect(answered(`3 YES\n${words}`, [other])).toMatchObject({ yes: [3], statements: [other] });
    expect(answered("3 YES", [said("Hold it", "subject")])).toMatchObject({ yes: [], lines: [] });
    expect(answered("3 YES", [said(words, "subject")])).toMatchObject({ yes: [] });
    expect(answered("3 YES\n3: make it SALON", [said("3: make it SALON")])).toMatchObject({ yes: [] });
    for (const also of ["4 NO", "4 YES", "CANCEL S-104"])
      expect(answered(`3 YES\n${also}\n${words}`, [other], { open: [3, 4] }), also).toMatchObject({
        yes: [],
      });
  });

  test("is none above a quotation that says more than our answer, unless a header says it", () => {
    const quoting = (...lines: string[]): number[] =>
      answered(["3 YES", "", "> 3. “SALONA” in row 1 of button 2 looks misspelt.", ...lines].join("\n"), [])
        .yes;
    expect(quoting()).toEqual([3]);
    expect(quoting("> From: Plate Desk", "> To: Dana Whitlock")).toEqual([3]);
    for (const line of ["> brass finish", "> To: hold the brass one", "> To: yes", "> Brass to: Dana"])
      expect(quoting(line), line).toEqual([]);
  });

  test("and new sheets is understood with talk, and what is said of the sheets is told", () => {
    const understood = (text: string): string[] => answered(text, [], { bringsSheets: true }).lines;
    const talk = "Been on the road all day.";
    expect(understood(`3 YES\n${talk}`)).toEqual(["3 YES", talk]);
    expect(understood(`3 YES\n${talk} My kids were sick.`)).toEqual(["3 YES", `${talk} My kids were sick.`]);
    expect(understood(`3 YES\n${talk} New sheet attached.`)).toEqual(["3 YES"]);
    expect(understood("3 YES\nNew sheet attached.")).toEqual(["3 YES"]);
  });
});

describe("a no that leans on a sheet which another line promises", () => {
  const no = "2 yes\n3 NO, superseded by rev P04";
  test("is a no where that names no point, and for a person where it names another", () => {
    expect(read(`${no}\nNew sheet attached.`)).toEqual(plainly([2], [3]));
    expect(read(`${no}\nNew sheet for 1 attached.`)).toMatchObject({ no: [], person: true });
    expect(read(no)).toMatchObject({ no: [], person: true });
  });
  test("is a no where sheets came with the reply", () => {
    const should = "2 is right. 3 should be LOBBY.";
    expect(read(should, { others: 0, bringsSheets: true })).toEqual(plainly([2], [3]));
    expect(read(should, { others: 0 })).toMatchObject({ no: [], person: true });
  });
});

test.each([
  ["a greeting that nobody knows", "Ahoy captain,\n3 YES", true],
  ["the same below an answer", "2 YES\nAhoy captain,\n3 YES", false],
  ["a closing that nobody knows", "3 YES\n\nOnwards and upwards,\nMarta", true],
  ["a firm above an answer", "Goldfinch Brothers - Will Call / Counter\n3 YES\nDana\n555-0142", false],
  ["a reply in capitals with a reason", "3 YES, THAT IS HOW THEY SPELL IT", true],
  ["initials in front", "DW: 3 YES, IT IS A FAMILY NAME", true],
  ["words that introduce between two answers", "2 is yes. My answers below. 3 is yes.", true],
  ["a reason below a no", "3 NO, new sheet attached\nIt is the old name of the room.", false],
])("%s: no person has to read %j: %s", (_, text, plain) => {
  expect(read(text).person).toBe(!plain);
});

describe("below whoever signs stands a firm, however they sign", () => {
  const firm = "Goldfinch Brothers Lighting And Supply House";
  test.each(["--", "Thanks", "Regards, Ros", "Dana", "Dana | Whitlock", "Marta"])("%s", (sign) => {
    expect(read(`3 YES\n\n${sign}\n${firm}`)).toEqual(plainly([3]));
  });
  test("and nowhere else", () => {
    expect(read(`3 YES\n\n${firm}`)).toMatchObject({ yes: [], person: true });
  });
});

test.each([
  ["a name at the end", "3 YES\nMarta", [3]],
  ["a name above an answer", "Marta\n3 YES", []],
  ["the word that was asked about, as it stands", "3 YES\nSalona", [3]],
  ["another word, in the place of it", "3 YES\nSalon", []],
  ["a name above a wish", "3 YES\nMarta\nMake it red", []],
  ["a slip that is owned below a yes", "3 YES\nsorry, my mistake", []],
  ["a reason between two answers", "2 yes. That is the name of the boat. 3 yes.", [2, 3]],
  ["a word that is nearly the one in question", "2 yes. It is Salone. 3 yes.", []],
])("%s: %j says yes to %j", (_, text, yes) => {
  expect(read(text)).toEqual({ yes, no: [], person: yes.length === 0 });
});

test("a slip that is owned below a no goes with it, and in one line with a sheet too", () => {
  expect(read("3 NO\nsorry, my mistake")).toEqual(plainly([], [3]));
  expect(read("2 NO. Sorry for the typo. New sheet attached. 3 YES.")).toEqual(plainly([3], [2]));
});

test.each(["yes", "oh yes\nyes", "yesterday\nyes", "yes\nnot sure", "no\nno way"])(
  "%j answers no two questions in turn",
  (text) => {
    expect(read(text, { others: 0 })).toEqual({ yes: [], no: [], person: true });
  },
);

test("a reply of thirty thousand characters is read, and a longer one is for a person", () => {
  expect(read(`3 YES${"\n".repeat(29_995)}`)).toMatchObject({ yes: [3] });
  expect(read(`3 YES${"\n".repeat(29_996)}`)).toMatchObject({ yes: [] });
});

describe("what stands above answers, and between them and a name", () => {
  const below = (line: string) => read(`2 YES\n3 YES\n\n${line}\nDana Whitlock`);
  const above = (line: string) => read(`${line}\n2 YES\n3 YES`);
  test.each(["On and so forth,", `On and on ${"x".repeat(30)},`])("may be a closing: %s", (line) => {
    expect(below(line)).toEqual(plainly([2, 3]));
  });
  test.each([
    "So on and so forth,",
    `On and on ${"x".repeat(31)},`,
    "On and so forth:",
    "On and on 2,",
    "Hold everything,",
  ])("is for a person below them: %s", (line) => {
    expect(below(line)).toMatchObject({ yes: [], person: true });
  });
  test.each(["Ho,", "Zonk dear,", "Dear good people there,", `H${"o".repeat(39)},`])(
    "may be a greeting: %s",
    (line) => {
      expect(above(line)).toEqual(plainly([2, 3]));
      expect(read(`2 YES\n${line}\n3 YES`)).toMatchObject({ yes: [], person: true });
    },
  );
  test.each([
    "H,",
    `H${"o".repeat(40)},`,
    "Zonk",
    "Zonk 2,",
    "Dear good people over there,",
    "Salona,",
    "Hold everything,",
  ])("is for a person above them: %s", (line) => {
    expect(above(line)).toMatchObject({ yes: [], person: true });
  });
});

describe("who answers may be named before the answer", () => {
  test.each(["DW:", "dw>", "Da:", "Dan:", "Dana Whitlock:", "[Dan]", "[DW] -"])("%s", (who) => {
    expect(read(`${who} 2 YES, 3 YES`)).toEqual(plainly([2, 3]));
  });
  test.each(["D:", "Wh:", "Whit:", "XY:", "DWX:", "DW"])("and nobody else: %s", (who) => {
    expect(read(`${who} 2 YES, 3 YES`)).toMatchObject({ yes: [], person: true });
  });
});

test.each(["3:\nYES", "2:\nYES\n3:\nYES", "Re: your question 3\nYES", "question 3\nYES", "#3 -\nYES"])(
  "%j is one line, broken behind its number",
  (text) => {
    expect(read(text)).toEqual(plainly(text.startsWith("2") ? [2, 3] : [3]));
  },
);
test.each(["12345:\nYES", "3\nYES", "So 3:\nYES", "3: x\nYES"])("%j are two lines", (text) => {
  expect(read(text)).toMatchObject({ yes: [], person: true });
});

describe("a wish that begins with a number is about that point", () => {
  test.each([
    "4: make it SALON",
    "1234: make it SALON",
    "#4 make it SALON",
    "no. 4 make it SALON",
    "2: make it SALON",
  ])("%s", (wish) => {
    expect(read(`3 YES\n${wish}`)).toEqual({ yes: [3], no: [], person: true });
  });
  test.each(["12345: make it SALON", "4x make it SALON", "3: make it SALON", "we: 4 make it SALON"])(
    "and may be about any where it begins with none, or with the one that is answered: %s",
    (wish) => {
      expect(read(`3 YES\n${wish}`)).toEqual({ yes: [], no: [], person: true });
    },
  );
});

describe("points in one line are read one by one where the line as a whole is not", () => {
  test.each([
    "Hello. 2: no, redone and put right, new sheet attached. 3: yes",
    "Thanks for spotting these. 2: no, redone in two rows, sheet attached. 3: yes",
  ])("%s", (line) => {
    expect(read(line)).toEqual(plainly([3], [2]));
  });
  test("and for a person if one of the pieces says more", () => {
    const line = "Hold it. 2: no, redone and put right, new sheet attached. 3: yes";
    expect(read(line)).toMatchObject({ yes: [], no: [], person: true });
  });
  test("with the initials of who answers before the whole line alone", () => {
    expect(read("DW: 2 yes. 3 yes")).toEqual(plainly([2, 3]));
    expect(read("2 yes DW: 3 yes")).toMatchObject({ yes: [], person: true });
  });
});
