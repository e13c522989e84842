import type {
  CancelGuidedRequest,
  ConfirmGuidedRequest,
  GuidedList,
  GuidedSurvey,
  GuidedTest,
  StartGuidedRequest,
} from '@ebbline/shared/contract/guided-test';
import { guidedListSchema, guidedSurveySchema, guidedTestSchema } from '@ebbline/shared/contract/guided-test';
import type { Result } from '@ebbline/shared/errors/result';
import { request } from './request';

const pathOf = (unit: string): string => `/api/units/${encodeURIComponent(unit)}/guided-tests`;
const pathOfTest = (unit: string, test: string): string => `${pathOf(unit)}/${encodeURIComponent(test)}`;

/** Every unit with the tests that it could have, and what is in the way. */
export const readGuidedSurvey = (): Promise<Result<GuidedSurvey>> => request('/api/guided-tests', guidedSurveySchema);

/** What one unit could have, with cautions and steps, and the tests that were. */
export const readGuidedTests = (unit: string): Promise<Result<GuidedList>> => request(pathOf(unit), guidedListSchema);

export const readGuidedTest = (unit: string, test: string): Promise<Result<GuidedTest>> =>
  request(pathOfTest(unit, test), guidedTestSchema);

/** Resolves with the test as it stands at its first step; refused with what is in the way. */
export const startGuidedTest = (unit: string, wish: StartGuidedRequest): Promise<Result<GuidedTest>> =>
  request(pathOf(unit), guidedTestSchema, { body: wish });

export const confirmGuidedStep = (
  unit: string,
  test: string,
  wish: ConfirmGuidedRequest,
): Promise<Result<GuidedTest>> => request(`${pathOfTest(unit, test)}/confirm`, guidedTestSchema, { body: wish });

export const cancelGuidedTest = (unit: string, test: string, wish: CancelGuidedRequest): Promise<Result<GuidedTest>> =>
  request(`${pathOfTest(unit, test)}/cancel`, guidedTestSchema, { body: wish });
