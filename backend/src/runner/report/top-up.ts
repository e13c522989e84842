import type { HistoryBuckets } from '../../ports/history-store';
import { isoOf } from './iso-of';

/** Half-widths and standard uncertainties of a counter, absolute in m3 and relative to what it counts; NaN where not stated. */
export interface CounterAccuracy {
  readonly absolute: number;
  readonly relative: number;
  readonly normalAbsolute: number;
  readonly normalRelative: number;
}

export interface Counted {
  /** m3; null: no reading, or only one bucket. */
  readonly volume: number | null;
  readonly expandedUncertainty: number | null;
  readonly fromMs: number | null;
  readonly toMs: number | null;
  readonly notes: readonly string[];
}

/** A counter that went back by less than this trembled, m3. */
const tremblesM3 = 1e-6;
const isBelow = (one: number, other: number): boolean => one < other - tremblesM3;

/**
 * What a counter went on by over a period: it counts through gaps too, so only its ends and its set-backs matter. Where it went
 * back, what was counted around then is not known, and is said. A bucket in which it went back has what stood on it before as its
 * highest and what it began anew with as its lowest: between the two nothing was counted.
 */
export function countedOf(buckets: HistoryBuckets, accuracy: CounterAccuracy): Counted {
  const { bucketMs, count, max, min, startMs } = buckets;
  const heard = [...count.keys()].filter((at) => (count[at] ?? 0) > 0);
  const [first, last] = [heard[0], heard.at(-1)];
  if (first === undefined || last === undefined)
    return { volume: null, expandedUncertainty: null, fromMs: null, toMs: null, notes: [] };
  let volume = 0;
  let setBacks = 0;
  let stood = min[first] as number;
  heard.forEach((at, i) => {
    const [low, high] = [min[at] as number, max[at] as number];
    const next = min[heard[i + 1] ?? -1] ?? Infinity;
    const below = isBelow(low, stood);
    // What follows goes on from the low end.
    const goesOnLow = isBelow(next, high) && !isBelow(next, low);
    const within = goesOnLow || (below && !isBelow(high, stood));
    if (below || within) setBacks += 1;
    if (!within) volume += Math.max(0, low - stood) + (high - low);
    stood = goesOnLow ? low : high;
  });
  const times = setBacks === 1 ? 'once' : `${setBacks} times`;
  return {
    volume,
    expandedUncertainty: expandedOf(volume, accuracy),
    fromMs: startMs[first] as number,
    toMs: (startMs[last] as number) + bucketMs,
    notes: setBacks === 0 ? [] : [`The counter went back ${times}: what was topped up around then is not in the sum.`],
  };
}

/**
 * k = 2. The relative error of a counter is the same at both ends, and so is one of what it counted; the absolute ones of two readings
 * are taken as independent. A half-width is of a rectangular distribution (JCGM 100:2008, 4.3.7).
 */
export function expandedOf(volumeM3: number, of: CounterAccuracy): number | null {
  const stated = [of.absolute, of.relative, of.normalAbsolute, of.normalRelative];
  if (stated.every((one) => !(one > 0))) return null;
  const [absolute = 0, relative = 0, normalAbsolute = 0, normalRelative = 0] = stated.map((one) => (one > 0 ? one : 0));
  const variance =
    (2 * absolute ** 2 + (relative * volumeM3) ** 2) / 3 + 2 * normalAbsolute ** 2 + (normalRelative * volumeM3) ** 2;
  return 2 * Math.sqrt(variance);
}

/** The counters of one loop together; where one is not known, so is the sum. */
export function togetherOf(counted: readonly (readonly [unit: string, Counted])[]): Omit<Counted, 'fromMs' | 'toMs'> & {
  readonly from: string | null;
  readonly to: string | null;
} {
  const all = counted.map(([, one]) => one);
  const silent = counted.filter(([, { volume }]) => volume === null).map(([unit]) => unit);
  const known = all.length > 0 && silent.length === 0;
  const uncertain = all.map(({ expandedUncertainty }) => expandedUncertainty);
  const times = <T extends 'fromMs' | 'toMs'>(key: T): number[] => all.flatMap((one) => one[key] ?? []);
  const [from, to] = [Math.max(...times('fromMs')), Math.min(...times('toMs'))];
  return {
    volume: known ? all.reduce((sum, { volume }) => sum + (volume ?? 0), 0) : null,
    expandedUncertainty:
      known && !uncertain.includes(null) ? Math.hypot(...uncertain.map((one) => one ?? Number.NaN)) : null,
    from: Number.isFinite(from) ? isoOf(from) : null,
    to: Number.isFinite(to) ? isoOf(to) : null,
    notes: [
      ...all.flatMap(({ notes }) => notes),
      ...silent.map((unit) => `The counter of ${unit} told nothing in this time.`),
    ],
  };
}
