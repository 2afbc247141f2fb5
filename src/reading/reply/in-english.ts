import { expanded, kindOf } from "./lexicon.ts";

/*
 * Answers and reasons in other languages, word for word in English. A clause is told in English only if all of its words
 * stand here. No word that denies, doubts, limits, wishes or changes does. Templates are those of answer-words.ts.
 */

type Words = Readonly<Record<string, string>>;

const french: Words = {
  "no change": `(sans/aucun/aucune/pas de) (changement/modification/correction), rien à (changer/corriger/modifier), ne rien changer`,
  "it is not a typo": `[ce n'est] (pas/aucune) (une/d'/de/une simple) (faute/erreur/faute de frappe/coquille), ce n'est pas une (faute/erreur/faute de frappe/coquille), pas d'erreur, pas de faute, aucune (faute/erreur), il n'y a pas (d'erreur/de faute)`,
  "go ahead": `(merci de/vous pouvez/veuillez) (lancer la gravure/graver/procéder/continuer/lancer la production/poursuivre/laisser/garder/conserver) [tel quel/ainsi/comme ça/telle quelle/tels quels]`,
  text: `texte, libellé`,
  department: `service`,
  acronym: `acronyme, sigle`,
  hospital: `hôpital`,
  yes: `oui`,
  "both yes": `oui (aux/pour les/à toutes les/à tous les) deux, les deux oui`,
  "all three yes": `oui (aux/pour les) trois, les trois oui`,
  "all yes": `oui à (tout/tous/toutes), (tout/tous/toutes) oui`,
  both: `les deux, tous les deux, toutes les deux, aux deux, ces deux`,
  "all three": `les trois, tous les trois, toutes les trois`,
  all: `tout, tous, toutes`,
  "are correct": `sont (bons/bonnes/justes/corrects/correctes/exacts/exactes/voulus/voulues/bien écrits/bien écrites)`,
  "is correct": `est (bon/bonne/juste/correct/correcte/exact/exacte/bien écrit/bien écrite/bien orthographié)`,
  "it is correct": `c'est (bon/juste/correct/exact/bien ça/bien écrit/bien comme ça/bien cela/la bonne orthographe)`,
  "it is intended": `c'est (voulu/intentionnel/volontaire/bien voulu/fait exprès) [ainsi/comme ça]`,
  "it is wanted by": `[c'est] (voulu/souhaité/demandé/choisi) [ainsi/comme ça] par`,
  "it is confirmed by": `[c'est] (confirmé/approuvé/validé/vérifié) par`,
  "it is": `c'est [bien], il s'agit (de/du/de la/de l'/d') `,
  "they are": `ce sont [bien]`,
  "it is written so": `(ça/cela/il/elle) s'écrit (ainsi/comme ça), c'est écrit (ainsi/comme ça), on l'écrit (ainsi/comme ça), on écrit (ainsi/comme ça), s'écrit (ainsi/comme ça), c'est ainsi que ça s'écrit`,
  "writes it so": `(l'écrit/le veut/l'appelle/l'a écrit/l'a voulu/l'a choisi) (ainsi/comme ça/comme cela)`,
  "has confirmed it": `(l'a/a/ont/l'ont) (confirmé/approuvé/validé), (le/me le/nous le) confirme, confirme`,
  "we confirm": `(je/nous) (confirme/confirmons), je vous confirme, nous vous confirmons`,
  "checked with": `(vérifié/confirmé) avec`,
  is: `est [bien]`,
  are: `sont [bien]`,
  "as it is": `tel quel, telle quelle, tel que, comme tel`,
  so: `ainsi, comme ça, comme cela`,
  the: `le, la, les, l'`,
  a: `un, une`,
  of: `de, d'`,
  "of the": `du, des, de la, de l'`,
  our: `notre, nos`,
  to: `à`,
  "to the": `au, aux`,
  for: `pour`,
  in: `en, dans`,
  and: `et`,
  too: `aussi, également`,
  same: `idem, pareil`,
  question: `question`,
  questions: `questions`,
  number: `numéro`,
  name: `nom, prénom, nom propre`,
  names: `noms, prénoms, noms propres`,
  "family name": `nom de famille`,
  word: `mot, terme`,
  spelling: `orthographe`,
  abbreviation: `abréviation`,
  customer: `client, cliente, clients`,
  owner: `propriétaire, propriétaires`,
  architect: `architecte`,
  family: `famille`,
  boss: `patron, patronne, chef`,
  founder: `fondateur, fondatrice`,
  daughter: `fille`,
  wife: `femme`,
  dog: `chien, chienne`,
  house: `maison, villa, demeure`,
  cottage: `chalet`,
  boat: `bateau, voilier, navire`,
  hotel: `hôtel`,
  company: `entreprise, société`,
  building: `bâtiment, immeuble`,
  room: `salle, pièce`,
  estate: `domaine`,
  farm: `ferme`,
  castle: `château`,
  street: `rue`,
  village: `village`,
  french: `français, française`,
  breton: `breton`,
  latin: `latin`,
  italian: `italien`,
  thanks: `merci, merci [bien/beaucoup] (de/pour) (votre/la/votre grande) (vigilance/vérification/patience/message/question/attention/aide/retour/relecture/réponse/soin/contrôle), merci d'avoir (vérifié/demandé), merci de (vérifier/demander), merci de votre (vigilance/patience/attention/aide)`,
  "sorry for the delay": `(désolé/désolée/désolés/pardon) (pour le retard/du retard/pour le délai/de répondre si tard/pour la réponse tardive/pour l'attente)`,
  "have a good day": `(bon/bonne/très bonne/excellente) (week-end/weekend/fin de semaine/journée/soirée/semaine/fin de journée/après-midi) [à vous/à tous/à toutes/à toute l'équipe/chez vous]`,
};

const spanish: Words = {
  "no change": `no lo (cambien/cambie), sin cambios, nada que cambiar`,
  "it is not a typo": `no (es/hay) (un/ningún) error, no hay error, no hay errores, no es error`,
  "go ahead": `(pueden/puede) (grabar/grabarlo/grabarla/grabarlos/seguir/continuar/proceder) [así], (déjenlo/déjelo/dejarlo/déjenla/déjela) (así/como está/tal cual)`,
  please: `por favor`,
  text: `texto`,
  spelling: `ortografía`,
  chapel: `capilla`,
  "basque word": `palabra (vasca/en euskera)`,
  yes: `sí`,
  "both yes": `sí (a/en/para) (las/los) dos, sí a (ambas/ambos), (las/los) dos sí, (ambas/ambos) sí`,
  "all three yes": `sí (a/en/para) (las/los) tres, (las/los) tres sí`,
  "all yes": `sí a (todo/todas/todos), (todo/todas/todos) sí`,
  both: `las dos, los dos, ambas, ambos`,
  "all three": `las tres, los tres`,
  all: `todo, todas, todos`,
  "are correct": `(están/son) (bien/correctas/correctos/bien escritas/bien escritos/bien así)`,
  "is correct": `(está/es) (bien/correcta/correcto/bien escrita/bien escrito/bien así/correcto así)`,
  correct: `correcto, correcta, correctos, correctas`,
  "it is intended": `es (intencional/a propósito/así a propósito), está (hecho/puesto) a propósito`,
  "it is so": `es así, así es`,
  "it is written so": `así se escribe, se escribe así, se escribe de esa manera, está escrito así`,
  "it is how the customer wants it": `así lo (quiere/escribe/pide/pidió/quiso/llama/escribió) (el cliente/la clienta/el dueño/la dueña/la familia/el propietario/el arquitecto/la propietaria)`,
  "wants it so": `lo (quiere/escribe/pide/pidió/quiso/llama) así`,
  "has confirmed it": `lo (confirmó/confirma/ha confirmado), ya (lo confirmó/confirmó)`,
  "confirmed by": `confirmado (por/con)`,
  "we confirm": `confirmo, confirmamos, le confirmo`,
  is: `es, está`,
  are: `son, están`,
  so: `así`,
  the: `el, la, los, las`,
  a: `un, una`,
  of: `de`,
  "of the": `del, de la, de los, de las`,
  our: `nuestro, nuestra`,
  to: `a`,
  "to the": `al`,
  for: `para`,
  in: `en`,
  and: `y`,
  too: `también`,
  same: `igual, ídem`,
  question: `pregunta`,
  questions: `preguntas`,
  name: `nombre, nombre propio`,
  names: `nombres`,
  "family name": `apellido, apellidos`,
  word: `palabra, término`,
  abbreviation: `abreviatura`,
  customer: `cliente, clienta`,
  owner: `dueño, dueña, propietario, propietaria`,
  architect: `arquitecto, arquitecta`,
  family: `familia`,
  boss: `jefe, jefa`,
  daughter: `hija`,
  wife: `esposa`,
  dog: `perro, perra`,
  horse: `caballo`,
  house: `casa, villa`,
  estate: `finca, hacienda`,
  ranch: `rancho`,
  boat: `barco, velero, lancha`,
  hotel: `hotel`,
  company: `empresa`,
  room: `sala, salón`,
  street: `calle`,
  village: `pueblo`,
  spanish: `español, castellano`,
  basque: `vasco, euskera`,
  catalan: `catalán`,
  thanks: `gracias, gracias por (preguntar/revisar/avisar/su paciencia/su ayuda/su mensaje/su atención/la pregunta/verificar/checar/confirmar/su amabilidad), (muchas/mil) gracias [por (la/su) (atención/ayuda/paciencia)], (quedo/quedamos) (atento/atenta/atentos/pendiente/pendientes)`,
  "sorry for the delay": `(disculpe/disculpen/perdón por/perdone/perdonen/disculpas por) (la demora/la tardanza/el retraso)`,
  "have a good day": `(buen/feliz/que tenga buen/que tengan buen) (fin de semana/día), (feliz/buena) (tarde/semana), saludos [y buen fin de semana]`,
};

const german: Words = {
  "no change": `bitte (nicht/nichts) (ändern/korrigieren), keine (änderung/änderungen/korrektur), nichts ändern`,
  "it is not a typo": `[das ist/es ist] kein (fehler/tippfehler/schreibfehler/rechtschreibfehler)`,
  "go ahead": `[bitte] [genau/exakt] so (gravieren/lassen/ausführen/fertigen/machen/übernehmen/belassen), bitte gravieren`,
  "is correct": `stimmt [so], ist [so] (korrekt/richtig geschrieben/richtig), ist korrekt so`,
  "it is correct": `das (ist/stimmt) [so] (richtig geschrieben/korrekt geschrieben)`,
  text: `text, beschriftung`,
  spelling: `schreibweise`,
  "company name": `firmenname`,
  yes: `ja`,
  "both yes": `ja zu (beiden/beidem), (beide/beides) ja`,
  "all three yes": `ja zu allen dreien, alle drei ja`,
  "all yes": `ja zu (allem/allen), (alle/alles) ja`,
  both: `beide, beides, beiden`,
  "all three": `alle drei`,
  all: `alle, alles, allen`,
  "is written so": `(schreibt sich/heißt/heisst/nennt sich) (so/wirklich so), wird [wirklich/tatsächlich] so geschrieben, ist so (richtig/korrekt/gewollt/geschrieben/gewünscht/gemeint)`,
  "are correct": `sind [so/beide/alle] (richtig/korrekt/gewollt/gewünscht/gemeint)`,
  "it is right so": `so ist (es/das) (richtig/korrekt/gewollt/gewünscht/gemeint), das soll so sein, (das/es) (gehört/muss) so`,
  "it is wanted by the customer": `[das/es] [ist] [so] (vom kunden/vom bauherrn/von der kundin/vom eigentümer/vom architekten) [so] (gewollt/gewünscht/bestätigt/vorgegeben/freigegeben)`,
  "it is checked with the customer": `[ist/wurde] mit (dem kunden/der kundin/dem bauherrn/dem eigentümer/dem architekten) (geprüft/abgestimmt/besprochen/geklärt)`,
  "wants it so": `(will/möchte/schreibt/wünscht/nennt) (es/das) so`,
  "has confirmed it": `hat (es/das) [so] bestätigt`,
  "it is": `das ist, es ist, dies ist, ist`,
  are: `sind`,
  right: `richtig, korrekt, gewollt`,
  so: `so`,
  the: `der, die, das, dem, den, des`,
  a: `ein, eine, einer`,
  of: `von, vom`,
  our: `unser, unsere, unserer, unseres`,
  to: `zu, zur, zum`,
  for: `für`,
  and: `und`,
  too: `auch, ebenfalls, ebenso`,
  question: `frage`,
  questions: `fragen`,
  name: `name, namen, eigenname, vorname, ortsname, flurname`,
  "family name": `familienname, nachname`,
  "house name": `hausname`,
  "boat name": `schiffsname, bootsname`,
  word: `wort, begriff, fachbegriff, fachwort`,
  abbreviation: `abkürzung`,
  customer: `kunde, kunden, kundin`,
  owner: `bauherr, bauherrn, eigentümer, eigentümers, besitzer, besitzers`,
  architect: `architekt, architekten`,
  family: `familie`,
  boss: `chef, chefs, chefin`,
  house: `haus, hauses, villa`,
  boat: `schiff, schiffs, schiffes, boot, boots, bootes, yacht`,
  hotel: `hotel, hotels`,
  company: `firma`,
  farm: `hof, hofes, hofs`,
  street: `straße, strasse`,
  dialect: `dialekt, mundart`,
  german: `plattdeutsch, platt, bairisch, schwäbisch, sächsisch, deutsch, schweizerdeutsch`,
  thanks: `danke, danke (fürs/für das) (nachfragen/prüfen/aufpassen/mitdenken), danke für die (nachfrage/mühe/prüfung/rückfrage/geduld), (danke für ihre/vielen dank für ihre) (nachricht/nachfrage/mühe/prüfung/rückfrage/geduld), vielen dank (fürs nachfragen/für die nachfrage/für die rückfrage)`,
  "sorry for the delay": `(entschuldigung/sorry/verzeihung/entschuldigen sie) [für] (die späte antwort/die verspätung/die verzögerung)`,
  "have a good day": `[ein/einen] (schönes/schönen/gutes/guten) (wochenende/tag/feierabend/abend) [noch/ihnen/euch]`,
};

const italian: Words = {
  "we confirm": `confermo, confermiamo, confirmamos`,
  text: `testo, texto`,
  "is right": `è scritto (giusto/bene/correttamente)`,
  "italian word": `parola italiana`,
  yes: `sì, sim`,
  "both yes": `sì (a/per) (entrambe/entrambi/tutte e due/tutti e due), (entrambi/entrambe/tutte e due) sì, sim (para/a) (ambos/ambas), (ambos/ambas) sim`,
  "all yes": `sì a (tutto/tutte/tutti), (tutto/tutte/tutti) sì, sim a (todos/todas/tudo)`,
  both: `entrambi, entrambe, ambos, ambas`,
  all: `tutto, tutte, tutti, tudo, todos, todas`,
  "is correct": `(va bene/è giusto/è corretto/è esatto/está certo/está correto) [così/assim]`,
  "are correct": `(vanno bene/sono giusti/sono giuste/sono corretti/sono corrette/estão certos/estão certas/estão corretos)`,
  "it is intended": `è voluto [così], è così, é assim mesmo, é proposital`,
  "it is written so": `si scrive (così/proprio così), è scritto così, escreve-se assim, se escreve assim`,
  "wants it so": `(lo vuole/lo scrive/lo chiama) così, (quer/escreve) assim`,
  "has confirmed it": `(ha confermato/l'ha confermato/ha confermato così), confirmou`,
  "confirmed by": `confermato (da/dal/dalla), confirmado (por/pelo/pela)`,
  is: `è, é`,
  are: `sono, são`,
  so: `così, assim`,
  the: `il, lo, la, gli, le, o`,
  a: `un, una, um, uma`,
  of: `di, de`,
  "of the": `del, della, dello, dei, delle, dell', do, da, dos, das`,
  our: `nostro, nostra, nosso, nossa`,
  and: `e`,
  too: `anche, também`,
  name: `nome, nome proprio`,
  "family name": `cognome, sobrenome`,
  word: `parola, palavra`,
  customer: `cliente`,
  owner: `proprietario, proprietaria, proprietário, proprietária, dono, dona`,
  family: `famiglia, família`,
  house: `casa, villa`,
  boat: `barca, nave, barco`,
  hotel: `albergo, hotel`,
  company: `ditta, azienda, empresa`,
  room: `sala`,
  thanks: `grazie, obrigado, obrigada, grazie per (il controllo/la verifica/l'attenzione/la pazienza), grazie e buona giornata`,
  "sorry for the delay": `(scusate/scusi) il ritardo, desculpe a demora`,
};

/** Words of those that English has too. A clause of these alone stays as it is. */
const alsoEnglish = new Set("a la le villa village hotel so platt die in e o do dos das da son".split(" "));
/** What may stand in a clause of any language. */
const neutral = /^(?:\d{1,4}|yes|ok|the word)$/u;

const bare = (words: string): string =>
  words.toLowerCase().replace(/['’]/gu, "' ").replace(/\s+/gu, " ").trim();

const tongues = [french, spanish, german, italian].map((words) => {
  const known = new Map(
    Object.entries(words).flatMap(([english, templates]) =>
      templates
        .split(",")
        .flatMap(expanded)
        .map((phrase) => [bare(phrase), english] as const),
    ),
  );
  return { known, longest: Math.max(...[...known.keys()].map((phrase) => phrase.split(" ").length)) };
});

/** A clause in English, or undefined if one of its words is not known in that language. */
function translated(clause: string, { known, longest }: (typeof tongues)[number]): string | undefined {
  const words = bare(clause)
    .replace(/\bthe word\b/gu, "the_word")
    .split(" ");
  const english: string[] = [];
  let isForeign = false;
  for (let at = 0; at < words.length; ) {
    const word = (words[at] ?? "").replace("the_word", "the word");
    const size = Array.from({ length: longest }, (_, i) => longest - i).find((length) =>
      known.has(words.slice(at, at + length).join(" ")),
    );
    if (size === undefined && !neutral.test(word)) return undefined;
    const phrase = words.slice(at, at + (size ?? 1));
    english.push(size === undefined ? word : (known.get(phrase.join(" ")) ?? ""));
    isForeign ||= size !== undefined && phrase.some((one) => !alsoEnglish.has(one));
    at += size ?? 1;
  }
  return isForeign
    ? english
        .join(" ")
        .replace(/^is\b/u, "it is")
        .replace(/^are\b/u, "they are")
    : undefined;
}

/** A clause in English, if all of it is known in one of those languages. */
function clauseInEnglish(clause: string): string | undefined {
  for (const tongue of tongues) {
    const english = translated(clause, tongue);
    if (english !== undefined) return english;
  }
  return undefined;
}

const isKnown = (clause: string): boolean =>
  bare(clause)
    .split(" ")
    .every((word) => word === "" || neutral.test(word) || kindOf(word) !== undefined);

/** A sentence in English. Beside its clauses in another language stand only words that are known. */
function sentenceInEnglish(sentence: string): string {
  const clauses = sentence.split(/(\s*[,;:()–—]+\s*|\s+[-=]+>?\s+)/u);
  const english = clauses.map((clause, at) => (at % 2 === 1 ? clause : clauseInEnglish(clause)));
  return english.every((one, at) => one !== undefined || isKnown(clauses[at] ?? ""))
    ? english.map((one, at) => one ?? clauses[at]).join("")
    : sentence;
}

/** A line whose sentences in other languages are in English. */
export function inEnglish(line: string): string {
  return line
    .split(/(\s*[.!\n]+\s*)/u)
    .map((sentence, at) => (at % 2 === 1 ? sentence : sentenceInEnglish(sentence)))
    .join("");
}
