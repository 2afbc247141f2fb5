const order = "(?:bestellung(?:en)?|auftr[aä]ge?|bl[aä]tt(?:er)?|formulare?|unterlagen)";
const commande = "(?:(?:bon de )?commandes?|fiches?|feuilles?|formulaires?)";
const pedido = "(?:pedidos?|hojas?|formularios?|fichas?)";

/** Whole sentences of German, French and Spanish that only hand something over. A word more, and they may say more. */
const covers = new RegExp(
  `^(?:${[
    // Greetings.
    "sehr geehrte damen und herren|liebe damen und herren|mesdames,? messieurs|madame,? monsieur|madame|monsieur|estimad[oa]s? (?:señor(?:es|a|as)?|equipo)|muy señor(?:es)? mío?s?",
    `(?:(?:anbei|beiliegend|im anhang|angehängt)(?: (?:finden|erhalten|bekommen) sie| sende(?:n)? (?:ich|wir)(?: ihnen)?| kommt| kommen| ist| sind)?) (?:die|unsere?|meine?) (?:nächste |neue )?${order}(?: mit der bitte um (?:bearbeitung|prüfung|bestätigung|auftragsbestätigung))?`,
    `(?:veuillez trouver |vous trouverez |je vous (?:envoie|adresse|transmets) |nous vous (?:envoyons|adressons|transmettons) )?(?:ci-?joint(?:e|s|es)?|en pièces? jointes?) (?:la|le|les|notre|nos|ma|mon|mes) ${commande}`,
    `(?:le |les )?(?:adjunt[oa]s?|adjuntamos|envío|enviamos)(?: adjunt[oa]s?)? (?:el|los|la|las|nuestr[oa]s?|mi|mis) ${pedido}`,
    // Thanks, and waiting for our answer.
    "vielen dank(?: im voraus| für ihre (?:hilfe|mühe|unterstützung))?|danke(?: im voraus)?|besten dank(?: im voraus)?",
    "(?:un grand )?merci(?: d['’]avance| par avance| beaucoup| de votre (?:aide|retour|attention))?|dans l['’]attente de votre (?:retour|réponse|confirmation)",
    "(?:muchas )?gracias(?: de antemano| por su (?:ayuda|atención|tiempo))?|(?:quedo|quedamos) a la espera de (?:su|sus) (?:confirmación|respuesta|noticias)|quedo a su disposición",
  ].join("|")})[\\s,.:!]*$`,
  "iu",
);

/** Whether a sentence of another language than English only greets, thanks, or says that the order is enclosed. */
export function isCoverNote(sentence: string): boolean {
  return covers.test(sentence.normalize("NFC").replace(/\s+/g, " ").trim());
}
