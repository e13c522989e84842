import type { TrendsFrame } from '@ebbline/shared/contract/live-feed';
import type { Reading } from '@ebbline/shared/contract/reading';
import type { ShallowRef } from 'vue';
import { shallowReadonly, shallowRef, watch } from 'vue';

/** A value that came by the live feed. */
export interface LiveSample {
  readonly seconds: number;
  readonly value: number | null;
}

export interface LiveTail {
  /** Newest readings, by `unit:point`. */
  readonly newest: Readonly<ShallowRef<ReadonlyMap<string, Reading>>>;
  /** What came since the screen was opened, oldest first, by `unit:point`. */
  readonly samples: Readonly<ShallowRef<ReadonlyMap<string, readonly LiveSample[]>>>;
}

/** History is read anew long before so many have come. */
const mostSamples = 300;

/** Gathers what the live feed tells of the points of a trend. A reading that says the same again is not kept twice. */
export function useLiveTail(frame: () => TrendsFrame | null): LiveTail {
  const newest = shallowRef<ReadonlyMap<string, Reading>>(new Map());
  const samples = shallowRef<ReadonlyMap<string, readonly LiveSample[]>>(new Map());
  watch(frame, (now) => {
    if (now === null) return;
    const readings = new Map(now.readings.map(({ unit, reading }) => [`${unit}:${reading.id}`, reading]));
    newest.value = readings;
    const next = new Map<string, readonly LiveSample[]>();
    for (const [key, reading] of readings) next.set(key, grown(samples.value.get(key) ?? [], reading));
    samples.value = next;
  });
  return { newest: shallowReadonly(newest), samples: shallowReadonly(samples) };
}

function grown(before: readonly LiveSample[], reading: Reading): readonly LiveSample[] {
  if (reading.time === null) return before;
  const seconds = Date.parse(reading.time) / 1000;
  const last = before.at(-1);
  if (last !== undefined && seconds <= last.seconds) return before;
  return [...before.slice(1 - mostSamples), { seconds, value: reading.value }];
}
