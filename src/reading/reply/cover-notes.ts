import { understood } from "./tallies.ts";

const order =
  "(?:bestellung(?:en)?|bestell(?:bl[aä]tt(?:er)?|formulare?)|auftr[aä]ge?|bl[aä]tt(?:er)?|formulare?|unterlagen)";
const commande = "(?:(?:bon de )?commandes?|(?:fiches?|feuilles?|formulaires?)(?: de commande)?)";
const pedido = "(?:pedidos?|(?:hojas?|formularios?|fichas?)(?: de pedido)?)";
/** "For the project ◇", where its name stands on the sheets. */
const forProject = `(?: (?:für|pour|para|de|del|du|zu|zum)(?: (?:das|le|el))?(?: (?:projekt|projet|proyecto|bauvorhaben))? [${understood.fact}${understood.name}])?(?: ?,? (?:commande|pedido|bestellung|auftrag)(?: (?:n[o°º]|nr)?\\.?)? ?[${understood.fact}])?`;

/** Whole sentences of German, French and Spanish that only hand something over. A word more, and they may say more. */
const covers = new RegExp(
  `^(?:(?:bonjour|hallo|hola|guten (?:tag|morgen)|buen(?:os|as) (?:días|tardes))[,!]? )?(?:${[
    // Greetings.
    "sehr geehrte damen und herren|liebe damen und herren|mesdames,? messieurs|madame,? monsieur|madame|monsieur|estimad[oa]s? (?:señor(?:es|a|as)?|equipo)|muy señor(?:es)? mío?s?",
    `(?:(?:anbei|beiliegend|im anhang|angehängt)(?: (?:finden|erhalten|bekommen) sie| sende(?:n)? (?:ich|wir)(?: ihnen)?| kommt| kommen| ist| sind)?) (?:die|unsere?|meine?) (?:nächste |neue )?${order}${forProject}(?: mit der bitte um (?:bearbeitung|prüfung|bestätigung|auftragsbestätigung))?`,
    `(?:veuillez trouver |vous trouverez |je vous (?:envoie|adresse|transmets) |nous vous (?:envoyons|adressons|transmettons) )?(?:ci-?joint(?:e|s|es)?|en pièces? jointes?) (?:la|le|les|notre|nos|ma|mon|mes) ${commande}${forProject}|voici (?:la|le|les|notre|nos) (?:suivante?s?|${commande})${forProject}`,
    `(?:le |les )?(?:adjunt[oa]s?|adjuntamos|envío|enviamos)(?: adjunt[oa]s?)? (?:el|los|la|las|nuestr[oa]s?|mi|mis) ${pedido}${forProject}`,
    "hallo(?: zusammen)?|guten (?:tag|morgen|abend)|bonjour(?: à tous)?|bonsoir|buen(?:os|as) (?:días|tardes|noches)|hola",
    "(?:mit )?(?:viele|freundliche|beste|liebe|herzliche)n? gr[üu]e?(?:ß|ss)en?|bonne (?:journée|soirée|semaine|fin de (?:journée|semaine))|bon week-?end|(?:un |muchos )?saludos?(?: cordiales)?",
    // Whoever has questions may ask.
    "bei (?:fragen|rückfragen) (?:(?:einfach|bitte|gerne?) )*(?:melden|anrufen|kontaktieren)|quedo atent[oa] a cualquier (?:duda|consulta|comentario)",
    // Thanks, and waiting for our answer.
    "vielen dank(?: im voraus| für ihre (?:hilfe|mühe|unterstützung))?|danke(?: im voraus)?|besten dank(?: im voraus)?",
    "(?:un grand )?merci(?: d['’]avance| par avance| beaucoup| (?:à vous )?et (?:bonne (?:journée|semaine|soirée)|bon week-?end|à bientôt)| de votre (?:aide|retour|attention))?|dans l['’]attente de votre (?:retour|réponse|confirmation)",
    "(?:muchas )?gracias(?: de antemano| por su (?:ayuda|atención|tiempo))?|(?:quedo|quedamos) a la espera de (?:su|sus) (?:confirmación|respuesta|noticias)|quedo a su disposición",
  ].join("|")})[\\s,.:!]*$`,
  "iu",
);

/**
 * Whether a sentence of another language than English only greets, thanks, or says that the order is enclosed. A sign
 * stands for what it names of the order.
 */
export function isCoverNote(sentence: string): boolean {
  return covers.test(
    sentence
      .normalize("NFC")
      .replace(/\s+/g, " ")
      .replace(/ ([.,!:])/g, "$1")
      .trim(),
  );
}
