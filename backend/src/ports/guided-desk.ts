import type {
  CancelGuidedRequest,
  ConfirmGuidedRequest,
  GuidedFault,
  GuidedList,
  GuidedSurvey,
  GuidedTest,
  StartGuidedRequest,
} from '@ebbline/shared/contract/guided-test';
import type { Result } from '@ebbline/shared/errors/result';
import type { Actor } from './identity';

/** Why a guided test was not begun, taken further, cancelled or found. */
export interface GuidedDeskFault {
  readonly code: GuidedFault | 'UNIT_UNKNOWN' | 'JOURNAL_UNAVAILABLE';
  readonly message: string;
}

/** Guided tests. What a person does is answered only after the journal has committed it. */
export interface GuidedDesk {
  survey(): GuidedSurvey;
  list(unit: string): Result<GuidedList, GuidedDeskFault>;
  /** One test, complete enough to be printed. */
  find(unit: string, test: string): Result<GuidedTest, GuidedDeskFault>;
  start(unit: string, request: StartGuidedRequest, actor: Actor): Result<GuidedTest, GuidedDeskFault>;
  confirm(unit: string, test: string, request: ConfirmGuidedRequest, actor: Actor): Result<GuidedTest, GuidedDeskFault>;
  cancel(unit: string, test: string, request: CancelGuidedRequest, actor: Actor): Result<GuidedTest, GuidedDeskFault>;
}

export const GUIDED_DESK = Symbol('GuidedDesk');
