/** Why a finding of `npm audit --omit=dev` does not reach Ebbline, and until when that is believed. */
export interface AuditAnswer {
  /** The advisory's address, as the audit names it. */
  readonly advisory: string;
  readonly package: string;
  /** The path in the lock file, such as `node_modules/influx/node_modules/url-parse`. */
  readonly path: string;
  /** What would have to happen for it to be reached, and why it does not. */
  readonly whyUnreachable: string;
  /** Last day, `2027-01-31`; at most half a year after it was written, then it is judged anew. */
  readonly until: string;
}

/** None is open. */
export const auditAnswers: readonly AuditAnswer[] = [];
