/** Whose orders one of our own people manages, and what that means. An order is meant if all that is given fits. */
export interface Managed {
  /** The project, as it is typed on sheets. */
  readonly project?: string;
  /** An address, or a domain. */
  readonly buyer?: string;
  /** Orders of more stations than these. */
  readonly stationsAbove?: number;
  readonly manager: { readonly name: string; readonly address: string };
  /** An order waits for the manager's word before it passes. */
  readonly waits: boolean;
}
