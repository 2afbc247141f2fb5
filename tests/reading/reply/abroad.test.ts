import { describe, expect, test } from "vitest";
import { answer, plainly, read, subject } from "./read-reply.ts";

/** What people of several countries write, in their English. */
describe("an answer in the English of somebody who learnt it", () => {
  test.each<[string, number[], number, number[], number[]?]>([
    ["2 - YES, it is surname of the owner.\n3 - YES, word is correct in Polish.", [2, 3], 0, [2, 3]],
    ["3 yes, this is how it should be.", [3], 0, [3]],
    ["Yes for all questions.", [2, 3], 0, [2, 3]],
    ["Hello, to 2 and 3 yes.", [2, 3], 0, [2, 3]],
    ["2 - tak (YES)", [2], 0, [2]],
    ["yes sir to both", [2, 3], 1, [2, 3]],
    ["3 is good leave it", [3], 0, [3]],
    ["no on 2, my bad, new one comin", [2], 0, [], [2]],
    ["(2)YES (3)YES", [2, 3], 0, [2, 3]],
    ["(2) YES, (3) YES", [2, 3], 0, [2, 3]],
    ["Regarding your Q2, our answer is YES.", [2], 0, [2]],
    ["We confirmed with end user. Q3 is YES.", [3], 0, [3]],
    ["We have confirmed with the end user.\nQ3: YES", [3], 0, [3]],
    ["Q2 -> NO. We will re-send the sheet.", [2], 0, [], [2]],
    ["As for item 3, it is correct (YES).", [3], 0, [3]],
    ["Concerning Q3, YES. This is the correct spelling.", [3], 0, [3]],
    ["Yes to items 2 and 3.", [2, 3], 1, [2, 3]],
    ["2. Yes, as drawn.\n3. No, this is our error. We will reissue.", [2, 3], 0, [2], [3]],
    ["3 yes, is correct, is the name of the building.", [3], 0, [3]],
    ["Yes for number 3.", [3], 0, [3]],
    ["2 sim 3 sim", [2, 3], 0, [2, 3]],
    ["2 sim, 3 sim (yes)", [2, 3], 0, [2, 3]],
    ["2 yes (it is portuguese)", [2], 0, [2]],
    ["2 is correct, yes, in portuguese we write like this", [2], 0, [2]],
    ["2 yes, in Portuguese it is written like this", [2], 0, [2]],
    ["Yes, ma'am, number 3 is right.", [3], 0, [3]],
    ["3 - YES. That is the name of our principal.", [3], 0, [3]],
    ["3 YES. It is the name of our school.", [3], 0, [3]],
    ["2 OUI / YES", [2], 0, [2]],
    ["Question 3: YES, it is the good spelling.", [3], 0, [3]],
    ["3 : YES, it is the name of the client.", [3], 0, [3]],
    ["yes to 2 n 3!!", [2, 3], 0, [2, 3]],
    ["3 yes xx", [3], 0, [3]],
    ["2y 3n", [2, 3], 0, [2], [3]],
    ["Sirs,\n\nMy answer to No. 3 is in the affirmative.", [3], 0, [3]],
    ["My answer to question 3 is yes.", [3], 0, [3]],
    ["As to question 3: yes. I am obliged for your care.", [3], 0, [3]],
    ["As to question 3: yes, the word is correct.", [3], 0, [3]],
    ["Your third question: yes.", [3], 0, [3]],
    ["Both as written, yes.", [2, 3], 0, [2, 3]],
    ["Number 2 yes, number 3 yes", [2, 3], 1, [2, 3]],
    ["2: yes, it is Romanian word", [2], 0, [2]],
    ["Yes for both, thank you dears", [2, 3], 1, [2, 3]],
    ["2 YES 3 YES", [2, 3], 0, [2, 3]],
    ["YES (3)", [3], 0, [3]],
    ["3 = yes. Run it.", [3], 0, [3]],
    ["For the number 3: yes, it is so.", [3], 0, [3]],
    ["2 and 3 yes, I confirm.", [2, 3], 0, [2, 3]],
    ["YES for the 2, YES for the 3", [2, 3], 0, [2, 3]],
    ["2 oui 3 oui", [2, 3], 0, [2, 3]],
    ["yes for the 3", [3], 0, [3]],
    ["3 yes it's arabic name", [3], 0, [3]],
    ["yes yes 3 is good, thank you my friend", [3], 0, [3]],
    ["Dear Sir/Madam,\n\nWe refer to your e-mail. Answer to question 2: YES.", [2], 1, [2]],
    ["Dear Quillgate Orders,\n\nThank you for your message. 2 YES.", [2], 1, [2]],
    ["Many thanks for your check! 2 = yes.", [2], 1, [2]],
    ["Hello, thanks for the control. 2 YES, it is correct.", [2], 0, [2]],
    [
      "2 YES, it's the name of the sea. 3 NO, sorry, I made a mistake, new sheet comes this afternoon.",
      [2, 3],
      0,
      [2],
      [3],
    ],
    ["3: No. Drafting error on our part; a revised sheet will be issued.", [3], 0, [], [3]],
    ["3 NO - we have a typo. We will send the corrected one.", [3], 0, [], [3]],
    ["Number 3 no!! sorry that was me, sending a new one now", [3], 0, [], [3]],
    ["no for 3, i made a mistake, i will do a new sheet", [3], 0, [], [3]],
    ["3 no sorry, i will send another sheet", [3], 0, [], [3]],
    ["3 is not right, thank you for seeing it. New sheet tomorrow.", [3], 0, [], [3]],
    ["3 - NO, thank you for finding this. I will send you corrected sheet.", [3], 0, [], [3]],
    ["3: NO. Good catch. Corrected sheet to follow.", [3], 0, [], [3]],
    ["3 NO. We apologize for the inconvenience. We will send the correct sheet soon.", [3], 0, [], [3]],
    ["3 NO, it is a mistake of typing, I send the good sheet.", [3], 0, [], [3]],
    ["Hello, 3 no, excuse me for the mistake, I send the correct sheet tomorrow morning.", [3], 0, [], [3]],
    [
      "Dear Quillgate,\n\nPlease find our responses below:\n\n2. Yes\n3. Yes\n\nKind regards",
      [2, 3],
      0,
      [2, 3],
    ],
    ["3 yes\nsent from the top of a ladder", [3], 0, [3]],
    ["3 yes man thats what they call it", [3], 0, [3]],
    ["3 yes thats how its spelled", [3], 0, [3]],
    ["Yeah 3 is right, thats the guys name", [3], 0, [3]],
    ["yup 3 is how they want it", [3], 0, [3]],
    ["Please be informed that Q3 is YES.", [3], 0, [3]],
    ["We hereby inform you as below.\n\nQ3: YES", [3], 0, [3]],
    ["We reply as below.\n\nQ2: YES\nQ3: YES\n\nThank you for your cooperation.", [2, 3], 0, [2, 3]],
    ["3: YES\n\nWe appreciate your continuous support.", [3], 0, [3]],
    ["Question 3 - yes, SALONA is the name of the restaurant.", [3], 0, [3]],
    ["3 YES, SALONA is correct.", [3], 0, [3]],
    ["3 YES. SALONA is right.", [3], 0, [3]],
    ["Yes. No. 3 is meant as it stands.", [3], 0, [3]],
    ["I write to say yes to question 3.", [3], 0, [3]],
    ["It is so. 3 YES.", [3], 0, [3]],
    ["3 YES. Thank you for your attention.", [3], 0, [3]],
    ["3 yes. God bless you all!", [3], 0, [3]],
    ["Good morning! 3 is a YES. Y'all have a blessed day.", [3], 0, [3]],
    ["3 YES\n\nHave a blessed day,\n\nDana Whitlock", [3], 0, [3]],
    ["YES on 3. Run it.", [3], 0, [3]],
    ["Yes to #3. Thx. DW", [3], 0, [3]],
    ["Hello, I confirm point 3.", [3], 0, [3]],
    ["Hello, point 3 is OK, please make it like this.", [3], 0, [3]],
    ["Yes for point 2 and yes for point 3, I checked with client.", [2, 3], 0, [2, 3]],
    ["3 - YES, this is correct, not mistake.", [3], 0, [3]],
    ["2 yes 3 yes ur good to go", [2, 3], 0, [2, 3]],
    ["3s a yes", [3], 0, [3]],
    ["yep n yep", [2, 3], 0, [2, 3]],
    ["yeah both good", [2, 3], 0, [2, 3]],
    ["yes on 3 thats the name", [3], 0, [3]],
    ["2 yes 3 no my bad", [2, 3], 0, [2], [3]],
    ["3 no, fat fingers", [3], 0, [], [3]],
    ["nope n nope sorry", [2, 3], 0, [], [2, 3]],
    ["Our reply:\nNo.2 YES\nNo.3 YES", [2, 3], 0, [2, 3]],
    ["Answer to Q2: YES.\nAnswer to Q3: YES.", [2, 3], 0, [2, 3]],
    ["Q3: NO.\nIt was our mistake. We will send you the revised sheet.", [3], 0, [], [3]],
    ["Q3 > YES", [3], 0, [3]],
    ["Question 2 -- yes.\nQuestion 3 -- no, our error; revised sheet to follow.", [2, 3], 0, [2], [3]],
    ["Yes, item 3 is as drawn.", [3], 0, [3]],
    ["Confirmed: yes to 3. That is the spelling on our drawings.", [3], 0, [3]],
    ["2 and 3: yes to both. We shall deal with 1 separately.", [2, 3], 1, [2, 3]],
    ["Yes to both 2 and 3; we will reissue the sheet for 1.", [2, 3], 1, [2, 3]],
    ["good morning, 2 yes, is ok like this", [2], 0, [2]],
    ["3 yes, this is the name of our client", [3], 0, [3]],
    ["all yes my friend, thanks", [2, 3], 0, [2, 3]],
    ["2 and 3 is yes", [2, 3], 0, [2, 3]],
    ["2 and 3 no, sorry for this, I will correct and send", [2, 3], 0, [], [2, 3]],
    ["The answer for question #3 is YES. Thank you for checking with us!", [3], 0, [3]],
    ["3 - YES, that is how Dr. Salona spells her name.", [3], 0, [3]],
    ["My answers are: 2. YES and 3. YES. Thank you kindly.", [2, 3], 0, [2, 3]],
    ["YES for questions 2 and 3. I will send the new form for number 1 this week.", [2, 3], 1, [2, 3]],
    ["NO to number 3, that was my typing. A new sheet is coming your way.", [3], 0, [], [3]],
    ["Hello, for the 3 it is YES.", [3], 0, [3]],
    ["Hello, it is yes for the point 3, the word is good.", [3], 0, [3]],
    ["2 : OK YES\n3 : OK YES", [2, 3], 0, [2, 3]],
    ["3 : yes it is well written so.", [3], 0, [3]],
    ["2 : YES\n3 : NO (error of typing, I send the sheet)", [2, 3], 0, [2], [3]],
    ["hi! 2 and 3 both yes thanks!!", [2, 3], 0, [2, 3]],
    ["number 3 yes!! checked with my boss", [3], 0, [3]],
    ["yes to number 3, boss checked it :)", [3], 0, [3]],
    ["To both your questions the answer is yes.", [2, 3], 0, [2, 3]],
    ["I am pleased to answer yes to both questions.", [2, 3], 0, [2, 3]],
    ["Both of the words are meant as they stand. Yes to 2 and to 3.", [2, 3], 0, [2, 3]],
    ["No. 3: no. The fault is mine; a fresh sheet follows.", [3], 0, [], [3]],
    ["2 is yes, 3 is yes. Thank you so so much!", [2, 3], 0, [2, 3]],
    ["3 yes please, it is correct, it's the name of my hotel!", [3], 0, [3]],
    ["3 no!! Thank you, I make mistake. New sheet is coming in one hour.", [3], 0, [], [3]],
    ["2. YES\n3. YES\n\nThanks for the quick turnaround.", [2, 3], 0, [2, 3]],
    ["Yes on both counts (2 and 3).", [2, 3], 0, [2, 3]],
    ["2 yes. 3 no. Corrected sheet en route.", [2, 3], 0, [2], [3]],
    ["Hello, yes for number 3, it is the correct word.", [3], 0, [3]],
    ["Good morning, I confirm: 2 yes and 3 yes.", [2, 3], 0, [2, 3]],
    ["Good morning, the answers are yes for 2 and yes for 3.", [2, 3], 0, [2, 3]],
    ["To the question number 3: YES, so it's right.", [3], 0, [3]],
    ["2 yes 3 yes bro", [2, 3], 0, [2, 3]],
    ["3 oui yes", [3], 0, [3]],
    ["2 yes, 3 no (my mistake, new sheet soon)", [2, 3], 0, [2], [3]],
    ["3 yes 👍👍", [3], 0, [3]],
    ["✅ 2 yes\n✅ 3 yes", [2, 3], 0, [2, 3]],
    ["2️⃣ yes 3️⃣ yes", [2, 3], 0, [2, 3]],
    ["2- yes\n3- yes", [2, 3], 0, [2, 3]],
    ["2/ yes\n3/ yes", [2, 3], 0, [2, 3]],
    ["2 …… YES\n3 …… YES", [2, 3], 0, [2, 3]],
    ["２ YES\n３ YES", [2, 3], 0, [2, 3]],
    ["【2】 YES\n【3】 YES", [2, 3], 0, [2, 3]],
    ["<2> YES\n<3> YES", [2, 3], 0, [2, 3]],
    ["No.2: YES / No.3: YES", [2, 3], 0, [2, 3]],
    ["*2* YES\n*3* YES", [2, 3], 0, [2, 3]],
    ["2 | YES\n3 | YES", [2, 3], 0, [2, 3]],
    ["Q.2 YES\nQ.3 YES", [2, 3], 0, [2, 3]],
    ["A2: YES\nA3: YES", [2, 3], 0, [2, 3]],
    ["ad 2: YES\nad 3: YES", [2, 3], 0, [2, 3]],
    ["Ad. 2 - YES\nAd. 3 - YES", [2, 3], 0, [2, 3]],
    ["pkt 2 - YES\npkt 3 - YES", [2, 3], 0, [2, 3]],
    ["re 2 yes\nre 3 yes", [2, 3], 0, [2, 3]],
    ["nº 2 yes\nnº 3 yes", [2, 3], 0, [2, 3]],
    ["#2 YES\n#3 YES", [2, 3], 0, [2, 3]],
    ["YES 2\nYES 3", [2, 3], 0, [2, 3]],
    ["YES: 2, 3", [2, 3], 0, [2, 3]],
    ["YES: 2\nNO: 3", [2, 3], 0, [2], [3]],
    ["Yes - 2. No - 3.", [2, 3], 0, [2], [3]],
    ["2. yes. 3. yes.", [2, 3], 0, [2, 3]],
    ["2. Yes; 3. Yes.", [2, 3], 0, [2, 3]],
    ["two: yes, three: yes", [2, 3], 0, [2, 3]],
    ["Yes (2) and yes (3).", [2, 3], 0, [2, 3]],
  ])("%j, asked %j", (text, open, others, yes, no) => {
    expect(read(text, { open, others })).toEqual(plainly(yes, no));
  });
});

const marked = answer.replace(/^/gm, "> ");
/** Names are those of the sender in read-reply.ts. */
describe("an answer above a quotation that another language introduces", () => {
  test.each([
    "wt., 17 lis 2026 o 09:12 Quillgate Orders <orders@quillgate.example> napisał(a):",
    "Em ter., 17 de nov. de 2026 às 09:12, Quillgate Orders <orders@quillgate.example> escreveu:",
    "Em 17/11/2026 09:12, Quillgate Orders escreveu:",
    "ti 17. marrask. 2026 klo 9.12 Quillgate Orders (orders@quillgate.example) kirjoitti:",
    "út 17. 11. 2026 v 9:12 odesílatel Quillgate Orders <orders@quillgate.example> napsal:",
    "Quillgate Orders <orders@quillgate.example> ezt írta (időpont: 2026. nov. 17., K, 9:12):",
    "mar., 17 nov. 2026, 09:12 Quillgate Orders <orders@quillgate.example> a scris:",
    "Quillgate Orders <orders@quillgate.example>, 17 Kas 2026 Sal, 09:12 tarihinde şunu yazdı:",
    "2026年11月17日(火) 9:12 Quillgate Orders <orders@quillgate.example>:",
    "wt., 17 lis 2026 o 09:12 Quillgate Orders\n<orders@quillgate.example> napisał(a):",
  ])("%s", (lead) => {
    expect(read(`3 YES\n\n${lead}\n\n${marked}`)).toEqual(plainly([3]));
    expect(read(`3 YES\n${lead}\n\n${answer}`)).toEqual(plainly([3]));
    // Nothing of ours follows, so that it may be the sender's own line.
    expect(read(`3 YES\n\n${lead}\n\nsee his note`)).toMatchObject({ yes: [], person: true });
    expect(read(`3 YES\n\n${lead}`)).toMatchObject({ yes: [], person: true });
  });

  test.each([
    ["Od", "Wysłano", "Do", "Temat", "ODP"],
    ["De", "Enviada em", "Para", "Assunto", "RES"],
    ["Lähettäjä", "Lähetetty", "Vastaanottaja", "Aihe", "VS"],
    ["Feladó", "Elküldve", "Címzett", "Tárgy", "Vá"],
    ["De la", "Trimis", "Către", "Subiect", "Re"],
    ["Kimden", "Gönderildi", "Kime", "Konu", "YNT"],
    ["От", "Отправлено", "Кому", "Тема", "HA"],
    ["差出人", "送信日時", "宛先", "件名", "RE"],
  ])("a header of %s, %s, %s and %s", (from, sent, to, about, prefix) => {
    const header = (words: string): string =>
      `${from}: Quillgate Orders <orders@quillgate.example>\n${sent}: 17.11.2026 09:12\n${to}: Dana\n${about}: ${words}`;
    const said = (words: string): ReturnType<typeof read> => read(`3 YES\n\n${header(words)}\n\n${answer}`);
    expect(said(`${prefix}: ${subject}`)).toEqual(plainly([3]));
    expect(said("another order")).toMatchObject({ yes: [], person: true });
  });
});

describe("a subject of an answer", () => {
  test.each([
    "Odp:",
    "RES:",
    "VS:",
    "SV:",
    "Antw:",
    "YNT:",
    "Vá:",
    "Ang:",
    "RE[2]:",
    "Re: Odp:",
    "回复：",
    "[EXT] Odp:",
  ])("may begin with %s", (prefix) => {
    expect(read("3 YES", { prefix })).toEqual(plainly([3]));
  });
  test.each([
    "HOLD:",
    "NO:",
    "Wait:",
    "NIE:",
    "Stop:",
    "Not yet:",
    "Cancel:",
    "Question for you about",
    "Nein:",
  ])("may not begin with %s", (prefix) => {
    expect(read("3 YES", { prefix }).person).toBe(true);
  });
});

describe("an answer below lines of ours that have no mark", () => {
  const [, , second = "", third = ""] = answer.split("\n");
  test("is for the point that they show", () => {
    expect(read(`${second.trim()}\nYES\n\n${third.trim()}\nDW: No, our error.`)).toEqual(plainly([2], [3]));
    expect(read(`${second}\n=> YES. It is name of the place.`)).toEqual(plainly([2]));
  });
  test("is for nobody knows which below two of them, or below other words", () => {
    expect(read(`${second}\n${third}\nYES`)).toMatchObject({ yes: [], person: true });
    expect(read(`${second} or SALON\nYES`)).toMatchObject({ yes: [], person: true });
  });
});

describe("below an answer", () => {
  test.each([
    "Pozdrawiam,\nDana Whitlock\nWhitlock Instalacje\ntel. 555-0131",
    "Abraço,\nDana",
    "Med vänlig hälsning\nDana Whitlock",
    "S pozdravem\nDana",
    "Üdvözlettel,\nDana",
    "Cu stimă,\nDana Whitlock",
    "Saygılarımla\nDana",
    "Ystävällisin terveisin\nDana Whitlock",
    "С уважением,\nDana",
    "Atenciosamente,\nDana",
    "Best regards,\n\n====================\nDana Whitlock\nOverseas Procurement Sect.\nWhitlock Denki\nTEL 555-0142\n====================",
    "--------------------\nDana Whitlock (she/her)\nAssociate, Whitlock Architects\n--------------------",
    "Thank you and God bless,\n\nDana Whitlock",
  ])("%j says nothing", (signature) => {
    expect(read(`3 YES\n\n${signature}`)).toEqual(plainly([3]));
    expect(read(`${marked}\n3 YES\n\n${signature}`)).toEqual(plainly([3]));
  });
});
