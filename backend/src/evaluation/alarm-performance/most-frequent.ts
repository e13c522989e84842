import type { Annunciation } from './annunciation';
import { byAlarm } from './chattering';

export interface Frequent {
  readonly last: Annunciation;
  readonly annunciations: number;
  /** Of all annunciations, %. */
  readonly share: number;
}

/** The ten alarms that were told most often; at an equal count by name. */
export function mostFrequent(annunciations: readonly Annunciation[]): Frequent[] {
  const counted = [...byAlarm(annunciations).values()].flatMap((told) => {
    const last = told.at(-1);
    return last === undefined
      ? []
      : [{ last, annunciations: told.length, share: (100 * told.length) / annunciations.length }];
  });
  return counted
    .sort((a, b) => b.annunciations - a.annunciations || (a.last.alarm < b.last.alarm ? -1 : 1))
    .slice(0, 10);
}
