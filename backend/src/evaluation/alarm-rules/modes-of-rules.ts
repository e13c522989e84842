import type { Mode } from '@ebbline/shared/contract/http-api';

/** No flow and no cooling are wanted: what needs flow is not judged. */
export const stoppedModes: readonly Mode[] = [
  'off',
  'vented',
  'tightnessTest',
  'filling',
  'purging',
  'standby',
  'stopping',
  'draining',
];

/** Water or gas is moved on purpose: the gas budget is larger, and levels say nothing of air. */
export const movingModes: readonly Mode[] = [
  'vented',
  'tightnessTest',
  'filling',
  'purging',
  'starting',
  'draining',
  'powerReturn',
];
