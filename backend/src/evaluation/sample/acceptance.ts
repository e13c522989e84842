/** What became of one message. Counts, and at most one refusal to show as an example. */
export interface Acceptance {
  /** Samples that reached their slots. */
  readonly accepted: number;
  /** Samples older than their slot: to history only. */
  readonly late: number;
  /** Same source time and value as the slot holds: counted, not kept again. */
  readonly repeated: number;
  /** Source time of the newest accepted sample, ms; NaN where none was. */
  readonly newestSourceMs: number;
  /** The first refusal in the message, or null. `accepted` may still be > 0: one bad field spoils only itself. */
  readonly refusal: Refusal | null;
  /** All refusals in the message, by code. */
  readonly refused: number;
}

export interface Refusal {
  readonly code: RefusalCode;
  /** What, where, what to do. Never the payload itself. */
  readonly message: string;
}

/** Every way a message or a field of it is refused. Stable; never reused for something else. */
export const refusalCodes = [
  'TOPIC_UNKNOWN',
  'PAYLOAD_TOO_LARGE',
  'PAYLOAD_EMPTY',
  'PAYLOAD_NOT_UTF8',
  'PAYLOAD_NOT_NUMBER',
  'PAYLOAD_NOT_JSON',
  'PAYLOAD_NOT_OBJECT',
  'PAYLOAD_TOO_DEEP',
  'FIELD_MISSING',
  'VALUE_NOT_NUMBER',
  'VALUE_NOT_FINITE',
  'VALUE_WORD_UNKNOWN',
  'TIME_MISSING',
  'TIME_MALFORMED',
  'TIME_FUTURE',
  'TIME_TOO_OLD',
] as const;
export type RefusalCode = (typeof refusalCodes)[number];
