import type { CodedError } from '@ebbline/shared/errors/coded-error';

/** What a server has read and will never take; all else that was sent with it, it took. */
export interface Refusal {
  readonly rows: number;
  readonly fault: CodedError;
}
