import { describe, expect, it } from 'vitest';
import {
  readPastAddress,
  windowOf,
  writePastAddress,
  type PastSpan,
} from '../../../../frontend/src/screens/past/past-address';

const zone = 'Europe/Oslo';
const window = (at: string, span: PastSpan): string[] => {
  const { fromMs, toMs } = windowOf(at, span, zone);
  return [fromMs, toMs].map((ms) => new Date(ms).toISOString().slice(0, 16));
};

describe('the scale of a past moment', () => {
  it('is the hour, the quarter of a day or the day of the site in which the moment lies', () => {
    const at = '2026-03-01T02:13:07Z';
    expect(window(at, 3600)).toEqual(['2026-03-01T02:00', '2026-03-01T03:00']);
    // 03:13 there: from midnight to six.
    expect(window(at, 21_600)).toEqual(['2026-02-28T23:00', '2026-03-01T05:00']);
    expect(window(at, 86_400)).toEqual(['2026-02-28T23:00', '2026-03-01T23:00']);
    expect(window('2026-03-01T02:59:59Z', 3600)).toEqual(['2026-03-01T02:00', '2026-03-01T03:00']);
  });

  it('has every second of a day on which clocks are changed on it', () => {
    // Set back at 01:00 UTC on 25 October 2026, set forward at 01:00 UTC on 29 March 2026.
    for (const day of ['2026-10-24T22:00:00Z', '2026-03-28T23:00:00Z'])
      for (const span of [3600, 21_600, 86_400] as const)
        for (let quarter = 0; quarter < 100; quarter += 1) {
          const atMs = Date.parse(day) + quarter * 900_000;
          const { fromMs, toMs } = windowOf(new Date(atMs).toISOString(), span, zone);
          expect([fromMs <= atMs, atMs < toMs, (toMs - fromMs) / 1000]).toEqual([true, true, span]);
        }
  });

  it('stays while one moves over the hour that comes twice', () => {
    for (const hour of ['2026-10-25T00', '2026-10-25T01'])
      for (const minute of ['00:00', '10:30', '59:59'])
        expect(window(`${hour}:${minute}Z`, 3600)[0]).toBe(`${hour}:00`);
  });

  it('stands in the address, which says no more than it has to', () => {
    const view = { at: '2026-03-01T02:13:07Z', span: 3600, step: 10 } as const;
    expect(writePastAddress(view)).toEqual({ at: view.at });
    const other = { ...view, span: 86_400, step: 60 } as const;
    expect(readPastAddress(writePastAddress(other))).toEqual(other);
    expect(readPastAddress({ at: '2026-03-01T02:13:07.900Z', span: '7', step: 'x' })).toEqual(view);
    expect(readPastAddress({ at: 'yesterday' }).at).toBeNull();
  });
});
