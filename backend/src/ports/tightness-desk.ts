import type {
  EndTightnessRequest,
  StartTightnessRequest,
  TightnessFault,
  TightnessList,
  TightnessTest,
} from '@ebbline/shared/contract/tightness-test';
import type { Result } from '@ebbline/shared/errors/result';
import type { Actor } from './identity';

/** Why a pressure-rise test was not started, ended or found. */
export interface TightnessDeskFault {
  readonly code: TightnessFault | 'UNIT_UNKNOWN' | 'JOURNAL_UNAVAILABLE';
  readonly message: string;
}

/** Guided pressure-rise tests. What a person does is answered only after the journal has committed it. */
export interface TightnessDesk {
  list(unit: string): Result<TightnessList, TightnessDeskFault>;
  /** One test, complete enough to be printed. */
  find(unit: string, test: string): Result<TightnessTest, TightnessDeskFault>;
  start(unit: string, request: StartTightnessRequest, actor: Actor): Result<TightnessTest, TightnessDeskFault>;
  end(
    unit: string,
    test: string,
    request: EndTightnessRequest,
    actor: Actor,
  ): Result<TightnessTest, TightnessDeskFault>;
}

export const TIGHTNESS_DESK = Symbol('TightnessDesk');
