/** One field of a letter's header, unfolded: the name in small letters, the value as it stands. */
export interface HeaderLine {
  readonly name: string;
  readonly value: string;
}
