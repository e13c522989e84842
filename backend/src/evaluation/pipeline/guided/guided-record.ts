import type { GuidedQuantity } from '@ebbline/shared/contract/guided-quantity';
import type {
  GuidedAsked,
  GuidedEnd,
  GuidedFault,
  GuidedGiven,
  GuidedKind,
  GuidedReading,
  GuidedResult,
  GuidedState,
  GuidedVerdict,
} from '@ebbline/shared/contract/guided-test';

/** A guided test as the judge keeps it and as the journal holds it: plain JSON, never changed in place. */
export interface GuidedRecord {
  readonly id: string;
  readonly unit: string;
  readonly kind: GuidedKind;
  readonly startedBy: string;
  readonly station: string;
  readonly startedMs: number;
  readonly comment: string;
  readonly settings: GuidedGiven;
  readonly steps: readonly StepRecord[];
  /** Place in `steps` of the one that is now; as many as there are once the last is done. */
  readonly at: number;
  readonly state: GuidedState;
  readonly instruments: readonly Instrument[];
  readonly result: GuidedResult | null;
  readonly verdict: GuidedVerdict | null;
  readonly endedFor: GuidedEnd | null;
  /** What was in the way, where something broke the test off. */
  readonly endedSaid: string | null;
  readonly endedBy: string | null;
  readonly endedMs: number | null;
}

/** What a point told at the start, as the site file states its accuracy. */
export interface Instrument {
  readonly point: string;
  /** For 95.45 %, in SI; null: not stated. */
  readonly expandedUncertainty: number | null;
  readonly quantity: GuidedQuantity;
}

export interface StepRecord {
  readonly id: string;
  readonly kind: 'confirm' | 'measure';
  readonly title: string;
  readonly text: string;
  readonly cautions: readonly string[];
  readonly asks: readonly GuidedAsked[];
  readonly doneMs: number | null;
  readonly by: string | null;
  readonly given: GuidedGiven;
  readonly comment: string;
  readonly measured: Measured | null;
}

export interface Measured {
  readonly seconds: number;
  readonly samples: number;
  readonly readings: readonly GuidedReading[];
  /** Readings that had no value in so many samples of the step; left out: none of them. */
  readonly unseen?: readonly { readonly reading: string; readonly samples: number }[];
}

interface Act {
  readonly unit: string;
  readonly operator: string;
  readonly station: string;
  readonly comment: string;
}
export interface StartGuided extends Act {
  readonly act: 'start';
  readonly kind: GuidedKind;
  readonly settings: GuidedGiven;
}
export interface ConfirmGuided extends Act {
  readonly act: 'confirm';
  readonly test: string;
  readonly step: string;
  readonly given: GuidedGiven;
  /** A token acts in the name: it can confirm nothing that one of two people has to see. */
  readonly byToken?: true;
}
export interface CancelGuided extends Act {
  readonly act: 'cancel';
  readonly test: string;
}
export type GuidedAction = StartGuided | ConfirmGuided | CancelGuided;

/** A change of a test that the journal must commit; `actor` null: the program did it. */
export interface GuidedChange {
  readonly what: 'started' | 'confirmed' | 'measured' | 'ended';
  readonly test: GuidedRecord;
  readonly atMs: number;
  readonly actor: string | null;
  readonly station: string | null;
  readonly comment: string | null;
}

export type GuidedOutcome =
  | { readonly ok: true; readonly change: GuidedChange }
  | {
      readonly ok: false;
      readonly code: GuidedFault | 'UNIT_UNKNOWN' | 'ACTION_NOT_RECORDED';
      readonly message: string;
    };
