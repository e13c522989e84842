import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { dataFolder } from '../../end-to-end/data-folder';
import { startReplayedBackend, type ReplayedBackend } from '../../helpers/replayed-backend';
import type { PlayedMessage } from '../../helpers/player';
import { pathOf, suiteNeeding } from '../../helpers/requirements';
import { stopAfterAll } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { placeholderLoop } from '../player/placeholder-loop';
import { readRows, utcMs } from '../player/read-rows';

/** Column, point, and the factor from the source's unit of measure to SI (SI brochure, 9th edition, table 8; °C as they are). */
const channels = [
  { column: 'Volume Flow RateRMS', point: 'loop.flow', toSi: (flow: number) => flow / 60_000 },
  // Gauge: without a barometer the standard atmosphere of altitude 0 m is added, 101,325 Pa (ISO 2533).
  { column: 'Pressure', point: 'supply.pressure', toSi: (bar: number) => bar * 1e5 + 101_325 },
  { column: 'Thermocouple', point: 'return.temperature', toSi: (celsius: number) => celsius },
] as const;

const site = {
  site: { id: 'bed', name: 'Replayed water circulation test bed', timeZone: 'Etc/UTC', altitude: '0 m' },
  halls: { hall: { name: 'Hall' } },
  units: {
    bed: {
      name: 'Test bed',
      hall: 'hall',
      ...placeholderLoop,
      elevations: { ...placeholderLoop.elevations, supplySensor: '0.5 m' },
      topic: 'bed',
      time: { path: 'time', form: 'iso' },
      points: {
        'loop.flow': { path: 'flow', unit: 'L/min', hose: 'supply', range: '0 to 200 L/min' },
        'supply.pressure': { path: 'pressure', unit: 'bar', reference: 'gauge', range: '-1.5 to 3 bar' },
        'return.temperature': { path: 'loop', unit: '°C', range: '0 to 100 °C' },
      },
    },
  },
};

interface Second {
  readonly atMs: number;
  readonly cells: readonly number[];
}

/** The files `0` to `9` of one valve join to one continuous run. */
const run = (): readonly Second[] =>
  Array.from({ length: 10 }, (_, i) => readRows(join(pathOf('data'), `skab/valve1/${i}.csv`), ';'))
    .flat()
    .map((row) => ({
      atMs: utcMs(row['datetime'] ?? ''),
      cells: channels.map(({ column }) => Number(row[column])),
    }))
    .sort((a, b) => a.atMs - b.atMs);

const messageOf = ({ atMs, cells: [flow, pressure, loop] }: Second): PlayedMessage => ({
  topic: 'bed',
  payload: JSON.stringify({ time: new Date(atMs).toISOString(), flow, pressure, loop }),
  sourceMs: atMs,
});

suiteNeeding(['data'], 'three hours of a water circulation test bed, one second in nineteen missing', () => {
  const keep = stopAfterAll();
  let backend: ReplayedBackend;
  let seconds: readonly Second[];
  let fromMs: number;
  let toMs: number;

  beforeAll(async () => {
    seconds = run();
    fromMs = seconds[0]?.atMs ?? Number.NaN;
    toMs = (seconds.at(-1)?.atMs ?? Number.NaN) + 1000;
    backend = keep(await startReplayedBackend(site, await dataFolder()));
    await backend.play(seconds.map(messageOf));
    // Its values are nobody's: a later time closes the last second of the run.
    await backend.play([messageOf({ atMs: toMs + 60_000, cells: [0, 0, 0] })]);
  }, 120_000);

  test('takes every row once', async () => {
    expect(seconds.length).toBeGreaterThan(11_000);
    expect(new Set(seconds.map(({ atMs }) => atMs)).size).toBe(seconds.length);
    const messages = seconds.length + 1;
    expect(await backend.intake()).toMatchObject({
      messages,
      samples: messages * channels.length,
      late: 0,
      repeated: 0,
      refusals: [],
    });
  });

  test.for(channels.map((channel, i) => ({ ...channel, i })))(
    'stores $point second by second with its gaps as gaps, nothing held over',
    async ({ point, toSi, i }) => {
      const at = new Map(seconds.map(({ atMs, cells }) => [atMs, toSi(cells[i] ?? Number.NaN)]));
      await until(async () => (await backend.history('bed', point, toMs - 1000, toMs, 1)).count[0] === 1, {
        withinMs: 90_000,
        everyMs: 100,
        what: 'the last second on disk',
      });
      let missing = 0;
      let belowVacuum = 0;
      for (let start = fromMs; start < toMs; start += 3_600_000) {
        const end = Math.min(start + 3_600_000, toMs);
        const { mean, count, resolution } = await backend.history('bed', point, start, end, (end - start) / 1000);
        expect(resolution).toBe('second');
        mean.forEach((value, k) => {
          const expected = at.get(start + k * 1000);
          if (expected === undefined) {
            missing += 1;
            expect([value, count[k]]).toEqual([null, 0]);
          } else if (expected < 0 && point === 'supply.pressure') {
            // The gauge tells down to −1.26 bar, which is below vacuum: it cannot be, so it is bad and kept without a value.
            belowVacuum += 1;
            expect([value, count[k]]).toEqual([null, 0]);
          } else {
            expect(count[k]).toBe(1);
            expect(Math.abs((value ?? Number.NaN) - expected)).toBeLessThan(1e-6 * Math.max(1, Math.abs(expected)));
          }
        });
      }
      expect(missing).toBe((toMs - fromMs) / 1000 - seconds.length);
      expect(missing).toBeGreaterThan(600);
      expect(belowVacuum).toBeLessThan(20);
    },
  );
});
