import type {
  HandCorrectionRequest,
  HandEntry,
  HandEntryFault,
  HandEntryList,
  HandEntryRequest,
  HandWithdrawalRequest,
} from '@ebbline/shared/contract/hand-entry';
import type { WaterQuality } from '@ebbline/shared/contract/water-quality';
import type { Result } from '@ebbline/shared/errors/result';
import type { Actor } from './identity';

export interface WaterDeskFault {
  readonly code: HandEntryFault | 'UNIT_UNKNOWN' | 'JOURNAL_UNAVAILABLE';
  readonly message: string;
}

/** Quality of the water, and the values of it that people type: told to be taken only after the journal has committed them. */
export interface WaterDesk {
  quality(unit: string): Result<WaterQuality, WaterDeskFault>;
  entries(unit: string): Result<HandEntryList, WaterDeskFault>;
  enter(unit: string, request: HandEntryRequest, actor: Actor): Result<HandEntry, WaterDeskFault>;
  correct(unit: string, entry: string, request: HandCorrectionRequest, actor: Actor): Result<HandEntry, WaterDeskFault>;
  withdraw(
    unit: string,
    entry: string,
    request: HandWithdrawalRequest,
    actor: Actor,
  ): Result<HandEntry, WaterDeskFault>;
}

export const WATER_DESK = Symbol('WaterDesk');
