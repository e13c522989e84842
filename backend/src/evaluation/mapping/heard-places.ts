import type { HeardForm, HeardPlace, HeardTime } from './heard-place';
import { hearPayload, type HeardValue } from './hear-payload';
import { placeKey } from './mapped-site';

/** So many places are kept, and so many moments of each: 600 × 120 × 8 bytes. */
export const mostPlaces = 600;
export const momentsKept = 120;
const mostWords = 12;
const longestTopic = 300;

interface Heard {
  readonly topic: string;
  readonly path: readonly string[];
  count: number;
  numbers: number;
  yesNos: number;
  least: number;
  most: number;
  newest: number;
  latest: string;
  unitBeside: string | null;
  time: HeardTime | null;
  readonly words: Set<string>;
  readonly ring: Float64Array;
}

/** What was heard, place by place, in bounded memory: what comes at further places is counted and not kept. */
export class HeardPlaces {
  private readonly places = new Map<string, Heard>();
  private moments = 0;
  private left = 0;

  /** @param isTaken whether a place belongs to a point already */
  constructor(private readonly isTaken: (topic: string, path: readonly string[]) => boolean) {}

  hear(topic: string, payload: Uint8Array, nowMs: number): void {
    if (topic.length > longestTopic) {
      this.left += 1;
      return;
    }
    const { values, time } = hearPayload(payload, nowMs);
    for (const value of values) this.take(topic, value, time);
  }

  /** Keeps the newest number of each place as the next moment of its series; called every few seconds. */
  moment(): void {
    const at = this.moments % momentsKept;
    for (const heard of this.places.values()) {
      heard.ring[at] = heard.newest;
      heard.newest = Number.NaN;
    }
    this.moments += 1;
  }

  /** Values that came at places for which there was no room. */
  leftOut(): number {
    return this.left;
  }

  list(): readonly HeardPlace[] {
    return [...this.places.values()].map((heard) => ({
      ...{ topic: heard.topic, path: heard.path, count: heard.count, form: formOf(heard) },
      ...{ least: heard.least, most: heard.most, words: [...heard.words], latest: heard.latest },
      ...{ unitBeside: heard.unitBeside, time: heard.time, series: inOrder(heard.ring, this.moments) },
    }));
  }

  private take(topic: string, { path, value, unitBeside }: HeardValue, time: HeardTime | null): void {
    const key = placeKey(topic, path);
    let heard = this.places.get(key);
    if (heard === undefined) {
      if (this.isTaken(topic, path)) return;
      if (this.places.size >= mostPlaces) {
        this.left += 1;
        return;
      }
      heard = newPlace(topic, path);
      this.places.set(key, heard);
    }
    heard.count += 1;
    heard.latest = String(value);
    heard.unitBeside = unitBeside ?? heard.unitBeside;
    heard.time = time ?? heard.time;
    const number = typeof value === 'number' ? value : Number.NaN;
    if (typeof value === 'number') {
      heard.numbers += 1;
      heard.least = Number.isNaN(heard.least) ? number : Math.min(heard.least, number);
      heard.most = Number.isNaN(heard.most) ? number : Math.max(heard.most, number);
      heard.newest = number;
    } else {
      if (typeof value === 'boolean') heard.yesNos += 1;
      if (heard.words.size < mostWords) heard.words.add(String(value));
    }
  }
}

const newPlace = (topic: string, path: readonly string[]): Heard => ({
  ...{ topic, path, count: 0, numbers: 0, yesNos: 0, least: Number.NaN, most: Number.NaN, newest: Number.NaN },
  ...{ latest: '', unitBeside: null, time: null, words: new Set() },
  ring: new Float64Array(momentsKept).fill(Number.NaN),
});

const formOf = ({ count, numbers, yesNos }: Heard): HeardForm =>
  numbers === count ? 'number' : yesNos === count ? 'yesNo' : 'word';

/** The oldest moment first. */
export function inOrder(ring: Float64Array, moments: number): Float64Array {
  if (moments <= ring.length) return ring.slice(0, moments);
  const at = moments % ring.length;
  const ordered = new Float64Array(ring.length);
  ordered.set(ring.subarray(at));
  ordered.set(ring.subarray(0, at), ring.length - at);
  return ordered;
}
