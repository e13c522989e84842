import type { LimitTrial, StartTrialRequest } from '@ebbline/shared/contract/limit-trial';
import type { Result } from '@ebbline/shared/errors/result';

/** Why a trial was not started, or not found. */
export interface TrialFault {
  readonly code:
    | 'TRIAL_ENTRY_UNKNOWN'
    | 'TRIAL_ENTRY_NOT_TRIED'
    | 'TRIAL_SETTING_ABSENT'
    | 'TRIAL_RANGE'
    | 'UNIT_UNKNOWN'
    | 'TRIAL_UNIT_WITHOUT'
    | 'TRIALS_RUNNING'
    | 'TRIAL_UNKNOWN';
  readonly message: string;
}

/** Limits tried over what was recorded. Trials are kept in memory, the latest ones, and end with the program. */
export interface TrialDesk {
  /** Answers at once with the trial as it begins. */
  start(request: StartTrialRequest): Result<LimitTrial, TrialFault>;
  find(id: string): Result<LimitTrial, TrialFault>;
  /** Ends a running trial with what it has found so far; one that has ended stays as it is. */
  cancel(id: string): Result<LimitTrial, TrialFault>;
}

export const TRIAL_DESK = Symbol('TrialDesk');
