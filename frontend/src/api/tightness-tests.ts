import type {
  EndTightnessRequest,
  StartTightnessRequest,
  TightnessList,
  TightnessTest,
} from '@ebbline/shared/contract/tightness-test';
import { tightnessListSchema, tightnessTestSchema } from '@ebbline/shared/contract/tightness-test';
import type { Result } from '@ebbline/shared/errors/result';
import { request } from './request';

const pathOf = (unit: string): string => `/api/units/${encodeURIComponent(unit)}/tightness-tests`;

/** The pressure-rise tests of a unit, what to mind before one, and whether one could start now. */
export const readTightnessTests = (unit: string): Promise<Result<TightnessList>> =>
  request(pathOf(unit), tightnessListSchema);

export const readTightnessTest = (unit: string, test: string): Promise<Result<TightnessTest>> =>
  request(`${pathOf(unit)}/${encodeURIComponent(test)}`, tightnessTestSchema);

/** Resolves with the test as it runs; refused with what is in the way. */
export const startTightnessTest = (unit: string, wish: StartTightnessRequest): Promise<Result<TightnessTest>> =>
  request(pathOf(unit), tightnessTestSchema, { body: wish });

export const endTightnessTest = (
  unit: string,
  test: string,
  wish: EndTightnessRequest,
): Promise<Result<TightnessTest>> =>
  request(`${pathOf(unit)}/${encodeURIComponent(test)}/end`, tightnessTestSchema, { body: wish });
