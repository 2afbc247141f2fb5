import { describe, expect, test } from "vitest";
import { inEnglish } from "../../../src/reading/reply/in-english.ts";
import { read } from "./read-reply.ts";

/** For each language: yes, no and a slip, a sheet that is here, one that is to come, and what stands around it. */
const tongues = {
  French: [
    "2 oui, c'est voulu",
    "3 non, faute de frappe",
    "Feuille corrigée ci-jointe.",
    "Je vous envoie la fiche corrigée demain matin.",
    "Bonjour,",
    "Bien cordialement,",
  ],
  Spanish: [
    "2 sí, es intencional",
    "3 no, es una errata",
    "Adjunto la hoja corregida.",
    "Mañana les envío la hoja corregida.",
    "Buenos días:",
    "Un saludo,",
  ],
  German: [
    "2 ja, ist so gewollt",
    "3 nein, Tippfehler",
    "Das korrigierte Blatt ist im Anhang.",
    "Ich schicke Ihnen morgen das korrigierte Blatt.",
    "Guten Tag,",
    "Mit freundlichen Grüßen",
  ],
  Italian: [
    "2 sì, è voluto",
    "3 no, è un refuso",
    "In allegato la scheda corretta.",
    "Vi mando la scheda corretta domani.",
    "Buongiorno,",
    "Cordiali saluti",
  ],
  Portuguese: [
    "2 sim, é intencional",
    "3 não, é um erro de digitação",
    "Segue em anexo a folha corrigida.",
    "Envio a folha corrigida amanhã.",
    "Bom dia,",
    "Atenciosamente,",
  ],
  Dutch: [
    "2 ja, klopt zo",
    "3 nee, typefout",
    "Gecorrigeerd blad in bijlage.",
    "Ik stuur u morgen het gecorrigeerde blad.",
    "Goedemorgen,",
    "Met vriendelijke groet,",
  ],
  Polish: [
    "2 tak, tak ma być",
    "3 nie, literówka",
    "Poprawiony arkusz w załączniku.",
    "Jutro wyślę poprawiony arkusz.",
    "Dzień dobry,",
    "Pozdrawiam",
  ],
  Swedish: [
    "2 ja, så ska det vara",
    "3 nej, skrivfel",
    "Rättad blankett bifogas.",
    "Jag skickar rättad blankett i morgon.",
    "Hej,",
    "Med vänliga hälsningar",
  ],
  Danish: [
    "2 ja, sådan skal det være",
    "3 nej, slåfejl",
    "Rettet blanket vedhæftet.",
    "Jeg sender rettet blanket i morgen.",
    "Goddag,",
    "Med venlig hilsen",
  ],
} as const;

describe.each(Object.entries(tongues))("in %s", (_, [yes, no, here, later, hello, bye]) => {
  test("yes and no are read, beside a sheet that is here and one that is to come", () => {
    const letter = (of: string): string => [hello, "", yes, no, of, "", bye, "Dana Whitlock"].join("\n");
    const both = { yes: [2], no: [3], person: false };
    expect(read(letter(here), { others: 0, bringsSheets: true })).toEqual(both);
    expect(read(letter(later), { others: 0 })).toEqual(both);
  });
  test("a yes beside a slip or a new sheet settles nothing", () => {
    const slip = no.slice(no.indexOf(",") + 2);
    const plain = yes.slice(0, yes.indexOf(","));
    for (const text of [`${plain}, ${slip}`, `${plain}. ${here}`])
      expect(read(text, { others: 0, open: [2], bringsSheets: true }), text).toMatchObject({ yes: [] });
  });
});

describe("words that another language has too", () => {
  test.each(["TO FIX", "On: H-1 pos 1.pdf", "no", "3 y", "Jo", "YES AS TYPED", "La Villa", "in a hotel"])(
    "“%s” stays",
    (line) => expect(inEnglish(line)).toBe(line),
  );
  test("a word in capitals among small letters is a legend's", () => {
    expect(inEnglish("2 debe ser SALON")).toBe("2 should be SALON");
    expect(inEnglish("3 soll FOYER NORD heißen")).toBe("3 should be FOYER NORD");
    expect(inEnglish("2 NEIN, 3 JA")).toBe("2 no, 3 yes");
  });
  test.each([
    ["3 - corretto", "3 - correct"],
    ["foglio corretto", "corrected sheet"],
    ["3 y 4 son correctos", "3 and 4 are correct"],
  ])("“%s” is in English “%s”", (line, english) => expect(inEnglish(line)).toBe(english));
});

test("a line keeps its capital, by which it is no end of the line before", () => {
  expect(inEnglish("Gesendet von meinem iPhone")).toBe("Sent from my phone");
  const doubt = "2 eigentlich ja, der Chef wollte aber nochmal drüberschauen\nGesendet von meinem iPhone";
  expect(read(doubt, { others: 0, open: [2] })).toEqual({ yes: [], no: [], person: true });
});

describe("words typed without their accents", () => {
  test.each([
    ["2 faute de frappe, fiche corrigee ci-jointe", "2 typo, corrected sheet attached"],
    ["arkusz w zalaczniku", "arkusz w zalaczniku"],
  ])("“%s” is in English “%s”", (line, english) => expect(inEnglish(line)).toBe(english));
  test.each(["2 se corregido", "si el cliente esta bien", "corrige la hoja"])("“%s” stays", (line) =>
    expect(inEnglish(line)).toBe(line),
  );
});
