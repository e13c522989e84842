/**
 * What the pipeline is fed. `nowMs` of every call is the tick time: on the wall clock monotonic time
 * anchored once to wall time, on the source clock the newest accepted source time. It never goes back.
 */
export interface RawMessage {
  readonly topic: string;
  readonly payload: Uint8Array;
  readonly retained: boolean;
}

export interface Acknowledge {
  readonly kind: 'acknowledge';
  readonly alarm: string;
  readonly operator: string;
  readonly station: string;
  readonly comment: string;
}

/** Ends the latch of an alarm whose condition has gone and that was acknowledged. */
export interface ResetLatch {
  readonly kind: 'resetLatch';
  readonly alarm: string;
  readonly operator: string;
  readonly station: string;
  readonly comment: string;
}

export type OperatorAction = Acknowledge | ResetLatch;
