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
