import { describe, expect, test } from "vitest";
import { answer, read } from "./read-reply.ts";

/** {{MARKED}} and {{PLAIN}} stand for our answer, quoted with marks and without. */
const withAnswer = (text: string): string =>
  text.replace("{{MARKED}}", () => answer.replace(/^/gm, "> ")).replace("{{PLAIN}}", () => answer);

describe("what binds a yes below or within a good-bye or a signature, in any language, leaves it to a person", () => {
  test.each([
    "3 YES\n\nPozdrawiam,\nDana Whitlock\n\nTylko jeśli szef się zgodzi",
    "3 YES\n\nMed vänlig hälsning,\nDana\nOm chefen säger ja",
    "3 YES\n\nAbraço,\nDana\n\nso after I call you tomorrow",
    "3 YES\n\nCordialement,\nDana\nsi le client est d'accord",
    "3 YES\n\nKind regards,\n\n====================\nDana Whitlock\nonly if the owner signs\n====================",
    "3 YES\n\n--------------------\nDana Whitlock\nPlease wait for our drawing\n--------------------",
    "3 YES\n\n====================\nHOLD UNTIL MONDAY\n====================",
    "3 YES\n\n====================\nDana Whitlock\nMAKE TWO OF THEM\n====================",
    "3 YES\n\n====================\nDana Whitlock\nSALON LOUNGE\n====================",
    "3 YES\n\nMoże,\nDana",
    "3 YES\n\nTalvez,\nDana",
    "3 YES\n\nForse,\nDana",
    "3 YES\n\nKanske,\nDana",
    "3 YES\n\nVielleicht,\nDana",
    "3 YES\n\nPeut-être,\nDana",
    "3 YES\n\nQuizás,\nDana",
    "3 YES\n\nBelki,\nDana",
    "3 YES\n\nJeśli tak,\nDana",
    "3 YES\n\nwt., 17 lis 2026 o 09:12 Quillgate Orders <orders@quillgate.example> napisał(a):\n\nplease hold it",
  ])("%j", (text) => {
    expect(read(withAnswer(text), { open: [3], others: 0 })).toMatchObject({ yes: [], person: true });
  });
});

describe("what binds a yes in or beside a quotation, leaves it to a person", () => {
  test.each([
    "3 YES\n\nwt., 17 lis 2026 o 09:12 only if Bob agrees <bob@site.example> napisał(a):\n\n{{MARKED}}",
    "3 YES\n\nwt., 17 lis 2026 o 09:12 nie teraz <bob@site.example> napisał(a):\n\n{{MARKED}}",
    "3 YES\n\nEm ter., 17 de nov. de 2026 às 09:12, talvez depois <orders@quillgate.example> escreveu:\n\n{{MARKED}}",
    "3 YES\n\nHold until 17.11.2026 09:12 <orders@quillgate.example>:\n\n{{MARKED}}",
    "3 YES\n\nMake it red, 17.11.2026 09:12 <orders@quillgate.example>:\n\n{{MARKED}}",
    "3 YES\n\nwt., 17 lis 2026 o 09:12 Quillgate Orders <orders@quillgate.example> napisał(a):\n\n{{PLAIN}}\nbut wait for my call",
    "3 YES\n\nOd: Quillgate Orders <orders@quillgate.example>\nWysłano: wtorek, 17 listopada 2026 09:12\nDo: wait for Bob\nTemat: ODP: CONFIRM: order EL-100, questions to answer\n\n{{PLAIN}}",
    "3 YES\n\nOd: Quillgate Orders <orders@quillgate.example>\nWysłano: wtorek, 17 listopada 2026 09:12\nDo: Dana\nTemat: do not engrave\n\n{{PLAIN}}",
    "3 YES\n\nOd: Quillgate Orders <orders@quillgate.example>\nWysłano: wtorek, 17 listopada 2026 09:12\nTemat: NIE: CONFIRM: order EL-100, questions to answer\n\n{{PLAIN}}",
    "3. “SALONA” in row 1 of button 2 looks misspelt.\nYES if the owner agrees",
    "3. “SALONA” in row 1 of button 2 looks misspelt.\nYes, I see that.",
  ])("%j", (text) => {
    expect(read(withAnswer(text), { open: [3], others: 0 })).toMatchObject({ yes: [], person: true });
  });
  test.each([
    "2. “SALONA” in row 1 of button 1 looks misspelt.\n3. “SALONA” in row 1 of button 2 looks misspelt.\nYES",
  ])("%j", (text) => {
    expect(read(withAnswer(text), { open: [2, 3], others: 0 })).toMatchObject({ yes: [], person: true });
  });
});

describe("what binds a yes in or beside the answer, leaves it to a person", () => {
  test.each([
    "DW: yes when he signs",
    "PS: yes",
    "3 YES\nNB: no",
    "I say yes to 3 of the 4",
    "we are 3, yes",
    "Is 3 a yes",
    "3 YES, two of them please",
    "3 YES, two please",
    "Please confirm 3",
    "Please correct 3",
    "I can't confirm 3",
    "We will confirm 3",
    "3 yes you are right",
    "3 yes in the lobby",
    "3 yes, for the restaurant",
    "3 yes, it is correct in the hotel",
    "3 yes, is it correct",
    "3 YES. SALON is correct.",
    "3 YES. SALON is the right spelling.",
    "3 yes, SALON is the name",
    "3 YES. Correct the spelling.",
    "3 YES. It was my mistake.",
    "3 YES. I will send the new sheet.",
    "3 YES my mistake, corrected sheet follows",
    "3 YES inshallah",
    "Google says 3 is right",
    "3 yes, God willing",
    "2 n 3 yes",
    "3 YES 🤔",
    "3 YES 🙃",
    "3 yes ✏️",
    "3 ✅❌",
    "3 yes, that is how nobody writes it",
    "3 yes, so they say",
    "3 yes, that's what they say",
    "3 yes, it is like the other name",
    "3 yes, in the name of the law",
    "3 yes, it is written in red",
    "3 yes, in Portuguese it is written so, in English not",
    "3 yes, the customer writes it in capitals",
    "We confirmed with end user. Q3 is YES in case the size is 3 mm.",
    "We are confirming with end user. Q3 YES.",
    "We asked the end user.\nQ3 YES after his reply.",
    "Thank you always for your kind support. Q3: YES on condition of price.",
    "2 sim, se o cliente quiser",
    "3 tak, ale proszę poczekać",
    "3 tak, jeśli klient potwierdzi",
    "3 sim talvez",
    "3 evet, belki",
    "3 não sim",
    "3 oui / non",
    "3 YES / NO",
    "3 si yes no",
    "(1) 3 YES (2) wait",
    "Regarding 3, yes I will answer",
    "My answer to 3 is yes and no",
    "I write to say yes to 3 when it fits",
    "3 in the negative, yes",
    "3 yes good to go wide",
    "3 yes make it like the last one",
    "3 - YES, it is not correct",
    "3 - YES, it is a mistake",
    "3 yes it is the name of the old owner",
    "3 yes it is the name of the wrong room",
    "3 yes, named for our former founder",
    "3 yes. Thank you for holding.",
    "3 yes. Warm greetings, hold it.",
  ])("%j", (text) => {
    expect(read(withAnswer(text), { open: [3], others: 0 })).toMatchObject({ yes: [], person: true });
  });
  test.each([
    "yes to 3 of your questions",
    "Please confirm both",
    "2 n 3 yes",
    "yes on both counts but 3",
    "both 2 yes",
  ])("%j", (text) => {
    expect(read(withAnswer(text), { open: [2, 3], others: 0 })).toMatchObject({ yes: [], person: true });
  });
});

describe("what may bind a yes, count something, or take it back, leaves it to a person", () => {
  test.each([
    "3 yes is what I would say",
    "3 yes is wrong",
    "3 yes will do later",
    "3 yes we will see",
    "3 yes I will send the right word",
    "3 yes my mistake",
    "3 yes sorry wrong sheet",
    "3 yes we send the new sheet",
    "3 yes new sheet",
    "3 yes will fix",
    "3 yes, it was wrong",
    "3 yes you are right",
    "3 yes, you are right, sorry",
    "yes 3 you are right",
    "3 yes, the word is the other name",
    "yes for 3 words",
    "3 words yes",
    "the word 3 is fine of two",
    "all good for 3 of them",
    "3 good name in text",
    "3 yes for each button",
    "3 yes in each case of doubt",
    "3 yes, it is good like the drawing of Monday",
    "3 ok for us",
    "3 yes for the text in red",
    "3 yes, the text is right in capitals",
    "3 yes, they write it with two L",
    "3 yes, is it right",
    "3 yes, it is not right",
    "3 yes, their name is written wrong",
    "3 yes, our name is their name now",
    "3 yes that's their call",
    "3 yes it is how we call it now",
    "3 yes make them so",
    "3 yes. Make it so big.",
    "3 yes. Make them.",
    "3 yes x 2",
    "3 yes x2",
    "x 3 yes",
    "Negative on 3, yes",
    "3 affirmative negative",
    "no. 3 no yes",
    "3 yes in the affirmative case only",
    "3 yes my friend will tell you",
    "3 yes bro jk",
    "3 yes man idk",
    "3 yes xx not",
    "3 yes. We confirmed with end user that it is SALON.",
    "We checked with the owner. 3 yes, SALON.",
    "3 YES.\n\nIt was our mistake. We will send you the revised sheet.",
    "3 YES\nsorry, our error",
    "3: YES.\nDrafting error on our part.",
    "3 YES\n\nCastellane said no\n\nDana",
    "3 YES\n\nDana\nWrong Way Electric",
    "Dear Sirs, we refer to your e-mail. 3 is under review, yes.",
    "Our answer to Q3 is as follows: YES or NO",
    "Our answers follow tomorrow.\n\n3 YES",
    "[Dana] yes later",
    "Dana: yes from Monday",
    "3 yes (for the lobby)",
    "3 yes (with an E)",
    "3 yes ⏳",
    "⚠️ 3 yes",
    "3 ✅ but",
    "✅ 3",
    "I confirm 3 is received",
    "I confirm the receipt of 3, yes",
    "I confirm both sheets, yes",
    "We confirm your answer, yes",
    "yes, thank you for 3",
    "thanks, yes I have your 3 questions",
    "yes your 3 questions are good",
    "yes, good questions: 3",
    "yes, all is fine, 3 cases",
    "yes 3 points please",
  ])("%j", (text) => {
    expect(read(text, { open: [3], others: 0 })).toMatchObject({ yes: [], person: true });
  });
  test.each(["for 2 it is yes, for 3 it is maybe", "for 2 it is yes, for 3 we wait", "2 yes for 3 words"])(
    "%j",
    (text) => {
      expect(read(text, { open: [2, 3], others: 0 })).toMatchObject({ yes: [], person: true });
    },
  );
});
