import { asksFor } from "./cues.ts";
import { tokensOf } from "./word-bag.ts";

/**
 * Words of refusal, doubt, condition and delay in languages of Europe: no, if, maybe, but, only, wait, later, ask,
 * wrong, and the like. Some are harmless words elsewhere, so only words of an unknown kind are held against them.
 */
const turning = new Set(
  tokensOf(
    `nie nein nicht kein keine non no nej inte ikke nei não nem nincs není hayır değil όχι δεν нет не ні jamais
    nunca nigdy aldrig nooit wenn falls sofern sobald bevor bis si dès quand avant jusqu se caso quando até
    cuando antes hasta om ifall när innan hvis når før jeśli jeżeli gdy zanim dopiero pokud když jestli než až
    ak keď hogyha mielőtt amíg jos ennen dacă când până eğer αν если когда пока якщо коли als indien zodra
    tenzij totdat voordat wanneer ако če vielleicht möglicherweise eventuell vermutlich wohl wahrscheinlich peut
    être probablement talvez provavelmente quizá quizás vez acaso probablemente forse magari probabilmente
    kanske möjligen troligen måske muligvis kanskje misschien wellicht waarschijnlijk może chyba prawdopodobnie
    możliwe možná snad asi možno talán esetleg lehet ehkä poate probabil belki galiba možda ίσως может возможно
    наверное можливо aber doch sondern jedoch mais porém pero sino però tuttavia lecz ale jednak avšak azonban mutta
    însă fakat echter но але αλλά nur bloß seulement uniquement somente apenas só sólo solo solamente soltanto endast
    bare tylko jedynie pouze iba csak vain doar numai sadece yalnız alleen slechts samo само только лише warten
    warte wartet stopp halt später noch attendez attendre attends attente arrêtez esperar espere espera aguarde
    aguardar pare depois aspetta aspettate attendere dopo poi ferma vänta stoppa senare senere czekaj czekać
    poczekaj stop później počkejte počkat později várjon várj később odota odottakaa myöhemmin așteptați bekle
    sonra wacht wachten later подождите позже стоп falsch fehler faux erreur errado erro equivocado error
    sbagliato errore fejl feil źle błąd błędnie špatně rossz hiba väärin virhe greșit yanlış fout verkeerd
    ändern changer modifier mudar alterar cambiar cambiare modificare ändra ændre endre zmienić změnit zmeniť
    muuttaa schimba değiştir wijzigen sans ohne senza utan uden uten bez nélkül ilman fără zonder außer sauf
    exceto salvo excepto eccetto tranne utom undtagen oprócz kromě kivéve paitsi fragen frage demandez demander
    perguntar pregunte preguntar chiedere chiedi fråga spørg spørre zapytaj pytanie dringend urgent urgente
    heute demain domani morgen mañana amanhã jutro zítra`,
  ),
);

/** Whether words of another language than English may bind or take back what they stand beside. */
export function turnsElsewhere(words: string): boolean {
  return tokensOf(words).some((token) => turning.has(token));
}

/** The same of any language. */
export function mayTurn(words: string): boolean {
  return /[?!]/.test(words) || asksFor(words) || turnsElsewhere(words);
}

/** How people say good-bye in other languages than English. Lines that consist of these words do no more. */
const farewells = new Set(
  tokensOf(
    `mit freundlichem freundlichen herzlichen herzliche herzlichst besten beste bester schönen schöne schöner
    liebe lieben viele grüßen gruessen grüße gruesse gruß gruss grüsse grüssen hochachtungsvoll tschüss ciao vg
    lg mfg bg dank danke vielen cordialement bien cordiales sincères salutations sentiments meilleurs meilleures
    respectueusement amicalement bonne journée soirée merci d avance à vous cdlt cdt saludos saludo cordial
    atentamente atentos atento un abrazo gracias muchas abraço abraços abs att atenciosamente cordialmente
    atenciosas cumprimentos melhores com os obrigado obrigada grato grata saudações um grande até breve cordiali
    distinti saluti cari saluto grazie mille cordialità buona giornata serata met vriendelijke vriendelijk
    hartelijke groet groeten groetjes hoogachtend mvg bedankt u wel med vänlig vänliga vänligen hälsning
    hälsningar bästa tack på förhand mvh hej ha en bra dag venlig venlige vennlig vennlige hilsen hilsner
    hilsninger kærlig mange bedste takk tak hyggelig ystävällisin terveisin terveiset terv kiitos parhain
    pozdrawiam pozdrawiamy serdecznie pozdrowienia poważaniem wyrazami szacunku dziękuję dziękujemy z góry pozdr
    miłego dnia s pozdravem srdečně srdečné pozdrav pozdravy pozdravom úctou děkuji díky ďakujem hezký den
    üdvözlettel tisztelettel köszönettel köszönöm üdv szép napot szívélyes cu stimă respect salutări multumesc
    mulțumesc mulțumim toate cele bune o zi bună saygılarımla saygılar sevgiler selamlar teşekkürler teşekkür
    ederim iyi çalışmalar günler lijep lep srdačan srdačno poštovanjem hvala lp με εκτίμηση ευχαριστώ
    χαιρετισμούς с уважением спасибо наилучшими пожеланиями з повагою дякую lugupidamisega tervitades parimate
    soovidega tänan cieņu pagarbiai ačiū paldies salam hormat salaam terima kasih shukran diolch cofion cynnes slán ngā mihi nui mahalo aloha vom bau sláinte tapadh leat`,
  ),
);
/** One of these alone is no good-bye. */
const around = new Set(
  tokensOf(
    "mit d à un com os um grande até med på en ha bra dag s z o zi cu toate cele bune с з u wel a mai den dnia",
  ),
);

/** "Pozdrawiam," "Med vänlig hälsning": a line of such words, seven at most. */
export function isFarewellElsewhere(line: string): boolean {
  const tokens = tokensOf(line);
  return (
    tokens.length > 0 &&
    tokens.length < 8 &&
    !/[\d?:;"“”()]/u.test(line) &&
    tokens.every((token) => farewells.has(token)) &&
    tokens.some((token) => !around.has(token))
  );
}
