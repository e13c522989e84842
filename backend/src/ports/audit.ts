/** What is written of people and access. Cause names are stable: they stand in the journal. */
export const auditCauses = [
  'signedIn',
  'signInRefused',
  'signInLockedOut',
  'signedOut',
  'sessionEnded',
  'firstAdminSet',
  'passwordSet',
  'personAdded',
  'personChanged',
  'linkMade',
  'tokenAdded',
  'tokenWithdrawn',
  'siteReloadAsked',
  'demoCommanded',
  'actionRefused',
  'refusalsCounted',
] as const;
export type AuditCause = (typeof auditCauses)[number];

export interface AuditEntry {
  readonly cause: AuditCause;
  /** Null where nobody known did it: a name that is nobody's may be a password typed into the wrong field. */
  readonly actor: string | null;
  readonly station: string;
  /** A sentence; never a secret. */
  readonly reason: string;
}

/** Writes into the alarm journal, hash-chained like all else. Refusals by the many are summed up: see `bounded-audit`. */
export interface Audit {
  /** Committed when it returns; false where the journal can't be written: what needs a record is then not done. */
  write(entry: AuditEntry): boolean;
}

export const AUDIT = Symbol('Audit');
