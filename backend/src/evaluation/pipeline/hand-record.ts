import type { HandEntryFault, HandMethod, MolybdateForm } from '@ebbline/shared/contract/hand-entry';
import type { WaterParameterId } from '@ebbline/shared/contract/water-parameters';

/** A value that a person typed, as the judge keeps it and as the journal restores it. Plain JSON; never changed. */
export interface HandRecord {
  readonly id: string;
  readonly unit: string;
  readonly parameter: WaterParameterId;
  /** In the unit of measure of the parameter: conductivity at 25 °C, molybdate as Mo; null: it withdraws what it `corrects`. */
  readonly value: number | null;
  readonly typed: {
    readonly value: number;
    readonly unit: string;
    readonly as: MolybdateForm | null;
    readonly sampleTemperature: number | null;
    /** Left out in entries of before it was asked for; null: not said. */
    readonly method?: HandMethod | null;
  } | null;
  readonly takenMs: number;
  readonly enteredMs: number;
  readonly by: string;
  readonly station: string;
  readonly note: string;
  readonly corrects: string | null;
}

interface Signed {
  readonly unit: string;
  readonly operator: string;
  readonly station: string;
  readonly note: string;
}

interface Typed extends Signed {
  readonly value: number;
  readonly unitOfMeasure: string;
  readonly as: MolybdateForm | null;
  readonly sampleTemperature: number | null;
  readonly method?: HandMethod | null;
  readonly takenMs: number;
}

export interface EnterByHand extends Typed {
  readonly kind: 'enterByHand';
  readonly parameter: string;
}

export interface CorrectByHand extends Typed {
  readonly kind: 'correctByHand';
  readonly entry: string;
}

export interface WithdrawByHand extends Signed {
  readonly kind: 'withdrawByHand';
  readonly entry: string;
}

export type HandAction = EnterByHand | CorrectByHand | WithdrawByHand;

export interface HandFault {
  readonly code: HandEntryFault | 'UNIT_UNKNOWN' | 'ACTION_NOT_RECORDED';
  readonly message: string;
}

export type HandOutcome = { readonly ok: true; readonly record: HandRecord } | ({ readonly ok: false } & HandFault);
