/** Things that one worker at a time does or watches. A lease that is not renewed ends by itself. */
export interface Leases {
  /** Takes what nobody else has, or renews it for whoever has it. False if somebody else has it. */
  readonly take: (what: string, holder: string, now: Date, until: Date) => Promise<boolean>;
  /** Lets go of what this holder has. */
  readonly drop: (what: string, holder: string) => Promise<void>;
}
