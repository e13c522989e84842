import { describe, expect, it } from 'vitest';
import { Listening } from '../../../../../backend/src/runner/mapping/listening';
import { compiledOrThrow, smallSiteDocument } from '../../../../helpers/small-site';

const bytes = (text: string | number): Uint8Array => new TextEncoder().encode(String(text));
const site = () => compiledOrThrow(smallSiteDocument());

describe('listening to what maps to nothing', () => {
  it('keeps the series of known points beside those that are heard, moment by moment, over a new site file', () => {
    let inForce = site();
    const listening = new Listening('#', 'Ada', 0, 60_000, () => inForce, null);
    const at = (n: number): void => {
      listening.hear('works/x', bytes(n), n * 1000);
      listening.moment(() => n);
    };
    for (const n of [1, 2, 3]) at(n);
    inForce = site();
    for (const n of [4, 5]) at(n);
    const [known] = listening.knownSeries();
    const [heard] = listening.places.list();
    expect([...(heard?.series ?? [])]).toEqual([1, 2, 3, 4, 5]);
    // What the new points were before is not known; what they are stands beside what was heard then.
    expect([...(known?.series ?? [])]).toEqual([NaN, NaN, NaN, 4, 5]);
  });

  it('hears nothing of what the program itself publishes, wherever that is', () => {
    const listening = new Listening('#', 'Ada', 0, 60_000, site, 'plant/told/v1/#');
    for (const topic of ['plant/told/v1/north/m1', 'ebbline/x', 'ebbline-simulator/x'])
      listening.hear(topic, bytes(1), 0);
    listening.hear('plant/told/v2', bytes(1), 0);
    expect(listening.messages).toBe(1);
  });

  it('looks at so many messages and so many bytes of a second, and counts the rest', () => {
    const large = new Listening('#', 'Ada', 0, 60_000, site, null);
    for (let i = 0; i < 20; i += 1) large.hear('works/x', bytes('1'.padEnd(100_000)), 500);
    expect([large.messages, large.notLookedAt]).toEqual([20, 10]);
    large.hear('works/x', bytes(1), 1500);
    expect(large.notLookedAt).toBe(10);
    const many = new Listening('#', 'Ada', 0, 60_000, site, null);
    for (let i = 0; i < 310; i += 1) many.hear('works/x', bytes(i), 500);
    expect(many.notLookedAt).toBe(10);
  });
});
