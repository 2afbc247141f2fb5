/** What an account may do; each may do what those before it may. */
export const roles = ["see", "act", "release", "administer"] as const;
export type Role = (typeof roles)[number];

/** Whether somebody of this role may do what asks for `needed`. */
export function may(role: Role, needed: Role): boolean {
  return roles.indexOf(role) >= roles.indexOf(needed);
}

/** One of our own people, as the desk's page knows him. */
export interface Account {
  /** What is typed at sign-in, in small letters. */
  readonly user: string;
  /** What stands in the record and in answers. */
  readonly name: string;
  readonly role: Role;
  /** A hash of the password. Absent where somebody else vouches for him. */
  readonly password?: string;
  readonly isShut: boolean;
}

/** Somebody's time at the page, from sign-in to sign-out. */
export interface Session {
  readonly user: string;
  readonly until: Date;
}

/** Who may come in, and who is in. Sessions are known by a hash of the secret that the browser keeps. */
export interface Accounts {
  readonly find: (user: string) => Promise<Account | undefined>;
  readonly all: () => Promise<readonly Account[]>;
  /** Makes an account or changes it. All its sessions end. */
  readonly save: (account: Account, by: string, now: Date) => Promise<void>;
  readonly begin: (session: Session, hash: string, now: Date) => Promise<void>;
  /** The account of a session that has not ended, if it may still come in. */
  readonly of: (hash: string, now: Date) => Promise<Account | undefined>;
  readonly end: (hash: string) => Promise<void>;
}
