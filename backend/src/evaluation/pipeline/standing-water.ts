import type { Mode } from '@ebbline/shared/contract/http-api';
import type { ModeFound } from './mode-of-unit';

/** Modes in which the pump is known to stand: the columns are static. */
const standing: readonly Mode[] = ['off', 'vented', 'tightnessTest', 'standby', 'draining'];

export const isStanding = (mode: ModeFound): boolean => mode.known && standing.includes(mode.mode);
