import type {
  TightnessEnd,
  TightnessFault,
  TightnessResult,
  TightnessSteadiness,
  TightnessVerdict,
} from '@ebbline/shared/contract/tightness-test';

/** A pressure-rise test as the judge keeps it and as the journal holds it: plain JSON, never changed in place. */
export interface TightnessRecord {
  readonly id: string;
  readonly unit: string;
  readonly startedBy: string;
  readonly station: string;
  readonly startedMs: number;
  readonly plannedMs: number;
  /** Free m³/s. */
  readonly acceptanceLimitM3PerS: number;
  readonly dry: boolean;
  readonly sourceIsolated: boolean;
  readonly gasVolumeStatedM3: number | null;
  readonly comment: string;
  readonly begin: TightnessBegin;
  readonly samples: number;
  readonly result: TightnessResult | null;
  readonly steadiness: TightnessSteadiness;
  readonly verdict: TightnessVerdict | null;
  readonly endedFor: TightnessEnd | null;
  readonly endedBy: string | null;
  readonly endedMs: number | null;
}

/** What stood when it began. */
export interface TightnessBegin {
  readonly pressurePa: number;
  readonly temperatureC: number;
  /** Null where the gas volume does not follow a level. */
  readonly levelM: number | null;
  readonly gasVolumeM3: number;
  /** Area by which the level changes the gas volume, m²; 0 where it does not. */
  readonly areaM2: number;
}

export interface StartTightness {
  readonly kind: 'startTightness';
  readonly unit: string;
  readonly plannedMs: number;
  readonly acceptanceLimitM3PerS: number;
  readonly dry: boolean;
  readonly sourceIsolated: boolean;
  readonly gasVolumeM3: number | null;
  readonly operator: string;
  readonly station: string;
  readonly comment: string;
}

export interface EndTightness {
  readonly kind: 'endTightness';
  readonly unit: string;
  readonly test: string;
  readonly operator: string;
  readonly station: string;
  readonly comment: string;
}

export type TightnessAction = StartTightness | EndTightness;

/** A change of a test that the journal must commit; `actor` null: the program did it. */
export interface TightnessChange {
  readonly what: 'started' | 'ended';
  readonly test: TightnessRecord;
  readonly atMs: number;
  readonly actor: string | null;
  readonly station: string | null;
  readonly comment: string | null;
}

export interface TightnessRefusal {
  readonly code: TightnessFault;
  readonly message: string;
}

export type TightnessOutcome =
  | { readonly ok: true; readonly change: TightnessChange }
  | {
      readonly ok: false;
      readonly code: TightnessFault | 'UNIT_UNKNOWN' | 'ACTION_NOT_RECORDED';
      readonly message: string;
    };
