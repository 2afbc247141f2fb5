import { expect, test } from "vitest";
import { isCoverNote } from "../../../src/reading/reply/cover-notes.ts";

test.each([
  "Sehr geehrte Damen und Herren,",
  "anbei unsere Bestellung mit der Bitte um Bearbeitung.",
  "Im Anhang finden Sie unsere Bestellung.",
  "Vielen Dank im Voraus!",
  "Veuillez trouver ci-joint notre commande.",
  "ci-joint la commande",
  "Dans l’attente de votre retour,",
  "Adjunto nuestro pedido.",
  "Les envío adjuntas las hojas.",
  "Quedo a la espera de su confirmación.",
  "Adjunto la hoja de pedido.",
  "Adjunto las hojas para el proyecto ◇.",
  "Quedo atenta a cualquier duda.",
  "Veuillez trouver ci-joint les fiches pour ◇ .",
  "im Anhang die Bestellblätter für ◇.",
  "Bei Fragen einfach melden.",
  "Viele Grüße",
])("%s says no more than that an order comes", (sentence) => expect(isCoverNote(sentence)).toBe(true));

test.each([
  "anbei unsere Bestellung in Weiß.",
  "Anbei unsere Bestellung, bitte noch nicht fertigen.",
  "Anbei unsere Bestellung mit der Bitte um Änderung.",
  "Veuillez trouver ci-joint notre commande, le deuxième bouton en noir.",
  "Merci de ne rien graver avant lundi.",
  "Adjunto nuestro pedido urgente.",
  "Adjunto nuestro pedido sin la placa S-2.",
  "Gracias por cambiar el botón 2.",
  "Adjunto las hojas para ◇ y una placa más.",
  "im Anhang die Bestellblätter für Haus Linde.",
  "Bei Fragen bitte nicht fertigen.",
  "Viele Grüße, bitte in Rot",
  "Vielen Dank für die Änderung.",
])("%s may say more", (sentence) => expect(isCoverNote(sentence)).toBe(false));
