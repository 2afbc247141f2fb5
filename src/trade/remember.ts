/** The answer for a key: the one remembered, or a new one. Of more than `most` the one asked for longest ago is forgotten. */
export function remember<Answer>(
  answers: Map<string, Answer>,
  key: string,
  most: number,
  make: () => Answer,
): Answer {
  const known = answers.get(key);
  const answer = known ?? make();
  answers.delete(key);
  answers.set(key, answer);
  const [oldest = key] = answers.keys();
  if (answers.size > most) answers.delete(oldest);
  return answer;
}
