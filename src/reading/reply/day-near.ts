/** In days. Who names a day in a subject means one of these weeks as a rule. */
const near = 45;

/** Whether a subject that ends in "(2/2)" may name a day that is near the one on which it was written. */
export function isDayNear(subject: string, written: Date | undefined): boolean {
  const [, month, day] = /\((\d)\/(\d)\)$/.exec(subject) ?? [];
  if (month === undefined || written === undefined) return false;
  const days = [-1, 0, 1].map((years) =>
    Date.UTC(written.getUTCFullYear() + years, Number(month) - 1, Number(day)),
  );
  return days.some((one) => Math.abs(one - written.getTime()) < near * 86_400_000);
}
