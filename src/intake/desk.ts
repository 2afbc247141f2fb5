import type { Catalogue } from "../catalogue/catalogue.ts";
import type { Clock } from "../ports/clock.ts";
import type { Log } from "../ports/log.ts";
import type { Sender } from "../ports/sender.ts";
import type { Store } from "../ports/store.ts";
import type { Edition } from "../reading/edition.ts";

/** All that the intake works with. */
export interface Desk {
  readonly store: Store;
  readonly sender: Sender;
  readonly clock: Clock;
  readonly log: Log;
  readonly catalogue: Catalogue;
  readonly editions: readonly Edition[];
  /** Who the answers come from. */
  readonly from: { readonly name: string; readonly address: string };
}
