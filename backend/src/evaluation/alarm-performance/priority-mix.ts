import type { Priority } from '@ebbline/shared/contract/alarm';
import type { Annunciation } from './annunciation';

export const priorities: readonly Priority[] = [1, 2, 3];

/** Share of annunciations that is aimed at with three priorities, %: ANSI/ISA-18.2-2016, EEMUA 191. */
const targets: Readonly<Record<Priority, number>> = { 1: 5, 2: 15, 3: 80 };

export interface MixRow {
  readonly priority: Priority;
  readonly annunciations: number;
  /** %; 0 where nothing was told. */
  readonly share: number;
  readonly target: number;
}

export const priorityMix = (told: readonly Annunciation[]): MixRow[] =>
  priorities.map((priority) => {
    const annunciations = told.filter((one) => one.priority === priority).length;
    const share = told.length === 0 ? 0 : (100 * annunciations) / told.length;
    return { priority, annunciations, share, target: targets[priority] };
  });
