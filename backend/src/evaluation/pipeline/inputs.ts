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

/** Takes an alarm from the list for a while; it comes back by itself. The comment says why. */
export interface Shelve {
  readonly kind: 'shelve';
  readonly alarm: string;
  readonly operator: string;
  readonly station: string;
  readonly comment: string;
  readonly forMs: number;
}

export interface Unshelve {
  readonly kind: 'unshelve';
  readonly alarm: string;
  readonly operator: string;
  readonly station: string;
  readonly comment: string;
}

/** Takes an alarm from the list until a person brings it back. The comment says why. */
export interface TakeOutOfService {
  readonly kind: 'takeOut';
  readonly alarm: string;
  readonly operator: string;
  readonly station: string;
  readonly comment: string;
  /** What watches the plant meanwhile. */
  readonly interimMeasures: string;
  /** When it is meant to be back, ms; null: not said. It does not come back by itself. */
  readonly plannedEndMs: number | null;
}

export interface ReturnToService {
  readonly kind: 'returnToService';
  readonly alarm: string;
  readonly operator: string;
  readonly station: string;
  readonly comment: string;
}

export type ModeAction = Shelve | Unshelve | TakeOutOfService | ReturnToService;

export type OperatorAction = Acknowledge | ResetLatch | ModeAction;
