/**
 * How many times the work grows when its subject grows eightfold: about 8 where it keeps pace, 64 where it is
 * squared. Work is the processor's time, the least of some runs. What grows too much is measured anew, for a busy
 * machine can make work that keeps pace look slow, but never work that is squared look quick.
 */
export async function growthOf<T>(
  make: (size: number) => T,
  size: number,
  use: (subject: T) => unknown,
): Promise<number> {
  const [small, large] = [make(size), make(8 * size)];
  await use(small); // so that what is done once counts for neither
  let growth = Number.POSITIVE_INFINITY;
  for (let round = 0; round < 4 && growth >= mostGrowth; round++) {
    const [one, other] = [await leastWork(small, use, 5), await leastWork(large, use, 3)];
    growth = Math.min(growth, other / Math.max(one, leastMs));
  }
  return growth;
}

/** Less cannot be told from nothing, in milliseconds. */
const leastMs = 2;

/** Beyond this, work is out of pace with its subject: between 8 and 64, nearer to neither. */
export const mostGrowth = 26;

async function leastWork<T>(subject: T, use: (subject: T) => unknown, runs: number): Promise<number> {
  let least = Number.POSITIVE_INFINITY;
  for (let run = 0; run < runs; run++) {
    const before = process.cpuUsage();
    await use(subject);
    const { user, system } = process.cpuUsage(before);
    least = Math.min(least, (user + system) / 1000);
  }
  return least;
}
