import type { Tongue } from "./tongue.ts";

export const french: Tongue = {
  families: [
    {
      why: "Emergency lighting and stops for emergencies have circuits of their own.",
      anywhere:
        "SECOURS|URGENCE|(ARRET|SORTIE) (SECOURS|URGENCE)|BAES|ECLAIRAGE SECURITE|(BLOC|ECLAIRAGE|SORTIE|ISSUE) SEC|BRIS GLACE|APPEL (INFIRMIER|INFIRM|MALADE)|CONFINEMENT",
      alone: "SECURITE",
      harmless: "(SALLE|SERVICE|ACCUEIL) URGENCE",
    },
    { why: "The way out must stay lit, marked and open.", anywhere: "EVACUATION", alone: "SORTIE" },
    {
      why: "Power or gas seems to be shut off for the whole of something, and somebody may trust that nothing is live.",
      anywhere:
        "COUPURE (ECLAIRAGE|GENERAL|GAZ|COURANT|ELECTRIQUE|FORCE|POMPIERS)|COUPE (CIRCUIT|GAZ)|VANNE|GAZ (ON|OFF|MARCHE|ARRET)|SECTIONNEUR|DISJONCTEUR|INTERRUPTEUR GENERAL|ISOLER|HORS TENSION|CONSIGNATION",
      alone: "COUPURE",
    },
    {
      why: "Fire alarms, doors and smoke fans answer to the fire system.",
      anywhere: "INCENDIE|ALARME|DESENFUMAGE|POMPIERS|COUPE FEU|PANIQUE",
      alone: "FEU",
      harmless: "ALARME REVEIL|REVEIL ALARME",
    },
    { why: "Somebody is warned of a danger.", anywhere: "DANGER|HAUTE TENSION|NE PAS ENTRER" },
  ],
  shorts: {
    ARRET: "ARR",
    COUPURE: "COUP",
    DESENFUMAGE: "DESENF DESENFUM",
    DISJONCTEUR: "DISJ DISJONCT",
    ECLAIRAGE: "ECL ECLAIR",
    EVACUATION: "EVAC EVACUER",
    GENERAL: "GENERALE GEN GAL",
    INTERRUPTEUR: "INTER INTERR INT",
    SECTIONNEUR: "SECTIONNER SECTIONN SECTIONNEMENT",
    SORTIE: "SORT",
    URGENCE: "URG",
  },
  fillers: "DE DU DES D L LA LE EN",
};
