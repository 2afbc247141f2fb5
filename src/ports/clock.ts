export interface Clock {
  readonly now: () => Date;
}
