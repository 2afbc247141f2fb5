import { expect, test } from "vitest";
import { quotedTime } from "../../../src/reading/letter/quoted-time.ts";

test.each([
  ["Sent: Monday, November 9, 2026 8:05 AM", "2026-11-09", "08:05"],
  ["Sent: Monday, November 9, 2026 12:05 AM", "2026-11-09", "00:05"],
  ["*Date:* Mon, Nov 9, 2026 at 8:05 PM", "2026-11-09", "20:05"],
  ["Date: Mon, 9 Nov 2026 08:05:00 -0600", "2026-11-09", "08:05"],
  ["Date: On Monday, November 9th, 2026 at 8:05 AM", "2026-11-09", "08:05"],
  ["Date: 2026-11-09 08:05", "2026-11-09", "08:05"],
  ["Gesendet: Montag, 9. März 2026 08:05", "2026-03-09", "08:05"],
  ["Datum: 09.11.2026, 08:05", "2026-11-09", "08:05"],
  ["Envoyé : lundi 9 août 2027 08:05", "2027-08-09", "08:05"],
  ["Enviado el: martes, 9 de diciembre de 2026 8:05", "2026-12-09", "08:05"],
])("“%s” is read", (line, date, time) => {
  expect(quotedTime(line)).toEqual({ date, time });
});

test.each([
  "Date: 11/9/2026 8:05 AM",
  "Date: today at 8:05",
  "Sent: Monday, November 9, 2026",
  "Sent: February 30, 2026 8:05",
  "Sent: Monday, Novembr 2026 8:05",
  "Subject: November 9, 2026 8:05 AM",
])("“%s” says no time, or not for certain", (line) => {
  expect(quotedTime(line)).toBeUndefined();
});
