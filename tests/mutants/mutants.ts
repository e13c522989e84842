import type { Mutant } from './mutant';
import { mutantsOfAccess } from './mutants-of-access';
import { mutantsOfDerived } from './mutants-of-derived';
import { mutantsOfEvaluation } from './mutants-of-evaluation';
import { mutantsOfShared } from './mutants-of-shared';

export const mutants: readonly Mutant[] = [
  ...mutantsOfShared,
  ...mutantsOfDerived,
  ...mutantsOfEvaluation,
  ...mutantsOfAccess,
];

/** Asked where the tests that a mutant names do not find it: every test of the pure rooms. */
export const fallbackTests = [
  'unit/shared',
  'unit/backend/evaluation',
  'published-values',
  'physical-sense',
  'alarm-lifecycle',
];
