import type { EnergyReport, EnergyStep } from '@ebbline/shared/contract/energy';
import type { Result } from '@ebbline/shared/errors/result';

export interface EnergyRequest {
  /** Null: not asked by unit. Both null: the whole site. */
  readonly unit: string | null;
  readonly hall: string | null;
  readonly fromMs: number;
  readonly toMs: number;
  readonly by: EnergyStep;
}

export interface EnergyFault {
  readonly code: 'UNIT_UNKNOWN' | 'HALL_UNKNOWN' | 'ENERGY_RANGE' | 'ENERGY_NOT_YET';
  readonly message: string;
}

/** Heat and electrical energy by the site's calendar, added up from history. */
export interface EnergyTotals {
  /** Rejects where the history store does. */
  report(request: EnergyRequest): Promise<Result<EnergyReport, EnergyFault>>;
}

export const ENERGY_TOTALS = Symbol('EnergyTotals');
