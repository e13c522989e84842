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

/** What runs in the end does not all run yet: vacuum first, then supply pressure, flow, facility water, and load last. */
export const startModes: readonly Mode[] = ['starting', 'powerReturn'];

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

/** Water is put in or taken out on purpose, metered or not: its sum tells nothing of what comes in by itself. */
export const refillModes: readonly Mode[] = ['filling', 'draining'];
