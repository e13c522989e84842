import { join } from 'node:path';
import type { JournalRow } from '@ebbline/shared/contract/alarm';
import type { Intake, PointList } from '@ebbline/shared/contract/http-api';
import { beforeAll, expect, test } from 'vitest';
import { dataFolder } from '../../end-to-end/data-folder';
import { startReplayedBackend, type ReplayedBackend } from '../../helpers/replayed-backend';
import { pathOf, suiteNeeding } from '../../helpers/requirements';
import { stopAfterAll } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { fleetSite } from './fleet-site';
import { at, dayEndMs, dayStartMs, playedDay, returnMs, silentMs, type PlayedDay } from './played-day';
import { type Fleet, type FleetNode, pointOfColumn, readFleet } from './read-fleet';

/** `npm test` plays the part of the day with the outage and the return; `npm run test:long` all of it. */
const wholeDay = process.env['EBBLINE_TEST_LONG'] === '1';
const [fromMs, toMs] = wholeDay ? [dayStartMs, dayEndMs] : [at('01:45:00'), at('22:15:00')];
const within = 120_000;

suiteNeeding(['data'], 'a day of 176 nodes of a computer hall, with the outage of their telemetry', () => {
  const keep = stopAfterAll();
  let fleet: Fleet;
  let day: PlayedDay;
  let backend: ReplayedBackend;
  let intake: Intake;
  let journal: readonly JournalRow[];
  let atFullScale: PointList;
  const isFullScale = (cell: unknown): boolean => cell === 25_450 || cell === 25_550;
  const rowsOf = (entry: string, from: string): JournalRow[] =>
    journal.filter((row) => row.entry === entry && row.from === from && row.kind === 'transition');
  const sourceMs = (row: JournalRow): number => Date.parse(row.sourceTime);
  const gatewayOf = (row: JournalRow): string => row.alarm?.split(':')[0] ?? '';
  const sorted = (ids: Iterable<string>): string[] => [...new Set(ids)].sort();

  beforeAll(async () => {
    fleet = readFleet(join(pathOf('data'), 'fleet/fleet_dev.csv'));
    day = playedDay(fleet, fromMs, toMs);
    const code = day.readings.find(({ cells }) => isFullScale(cells['chassis_w']));
    const codeMs = code?.atMs ?? Number.NaN;
    backend = keep(await startReplayedBackend(fleetSite(fleet), await dataFolder()));
    await backend.play(day.messages.filter((message) => message.sourceMs <= codeMs));
    atFullScale = await backend.ebbline.get(`/api/units/${code?.node.id ?? ''}/points`);
    await backend.play(day.messages.filter((message) => message.sourceMs > codeMs));
    intake = await backend.intake();
    journal = await backend.journal();
  }, 300_000);

  test('every value that was published is taken once; what was sent twice or had no reading is counted as such', () => {
    const values = (readings: PlayedDay['readings']): number =>
      readings
        .filter((reading) => reading !== day.noReading)
        .reduce((sum, { cells }) => sum + Object.keys(cells).length, 0);
    expect(fleet.nodes).toHaveLength(176);
    expect(intake).toMatchObject({
      messages: day.messages.length,
      samples: values(day.readings) + day.signals.length,
      repeated: values(day.repeated),
      late: 0,
      otherTopics: { messages: 0, refused: 0 },
    });
    expect(intake.refusals.map(({ code, count }) => [code, count])).toEqual([['VALUE_NOT_NUMBER', 1]]);
  });

  test('history holds of every node, one of its points in turn, as many values as were published and not bad', async () => {
    const published = (node: FleetNode, column: string): number =>
      day.readings.filter((one) => one.node === node && one !== day.noReading && !isFullScale(one.cells[column]))
        .length;
    const asked = fleet.nodes.map((node, i) => ({ node, column: node.fitted[i % node.fitted.length] ?? '' }));
    // The last seconds are on their way to the disk.
    const stored = async ({ node, column }: (typeof asked)[number], expected: number): Promise<number | undefined> => {
      const { count } = await backend.history(node.id, pointOfColumn[column] ?? '', fromMs, toMs, 1);
      return count[0] === expected ? expected : undefined;
    };
    for (const one of asked) {
      const expected = published(one.node, one.column);
      expect(expected).toBeGreaterThan(50);
      await until(() => stored(one, expected), {
        withinMs: 90_000,
        everyMs: 100,
        what: `${expected} values of ${one.node.id} ${one.column}`,
      });
    }
  }, 120_000);

  test('the full-scale code of the power meter is shown as bad and not kept as a power', async () => {
    const power = atFullScale.points.find(({ id }) => id === 'unit.power');
    expect(power).toMatchObject({ quality: 'bad', reasons: ['outOfRange'] });
    expect(isFullScale(power?.value)).toBe(true);
    const codes = day.readings.filter(({ cells }) => isFullScale(cells['chassis_w']));
    expect(codes.length).toBeGreaterThan(wholeDay ? 10 : 0);
    const besideMs = 100_000;
    for (const { node, atMs } of codes) {
      const good = day.readings.filter(
        (one) => one.node === node && Math.abs(one.atMs - atMs) < besideMs && !isFullScale(one.cells['chassis_w']),
      );
      // By seconds: the samples before and after, and nothing in between.
      const { max, count } = await backend.history(node.id, 'unit.power', atMs - besideMs, atMs + besideMs, 200);
      expect(count.reduce((sum, one) => sum + one, 0)).toBe(good.length);
      expect(max.filter((value) => value !== null && value > 20_000)).toEqual([]);
    }
  });

  test('the outage ends as exactly one connection alarm a gateway, within 120 s', () => {
    const raised = rowsOf('COM-1', 'normal');
    expect(raised.map(gatewayOf).sort()).toEqual(sorted(fleet.nodes.map(({ gateway }) => gateway)));
    for (const row of raised) {
      expect(sourceMs(row)).toBeGreaterThan(silentMs);
      expect(sourceMs(row)).toBeLessThanOrEqual(silentMs + within);
    }
  });

  test('the alarms of those that return are cleared within 120 s, and no other', () => {
    const back = sorted(day.readings.filter(({ atMs }) => atMs >= returnMs).map(({ node }) => node.gateway));
    const cleared = rowsOf('COM-1', 'unacknowledged');
    expect(back.length).toBeGreaterThan(0);
    expect(cleared.map(gatewayOf).sort()).toEqual(back);
    for (const row of cleared) {
      expect(row.to).toBe('returnedUnacknowledged');
      expect(sourceMs(row)).toBeGreaterThan(returnMs);
      expect(sourceMs(row)).toBeLessThanOrEqual(returnMs + within);
    }
  });

  test('no dry sensor and no missing reading raises a leak alarm, and the one true wet reading does', () => {
    const raised = rowsOf('WATER-1', 'normal');
    expect(raised.map(({ unit }) => unit)).toEqual([day.wet.node.id]);
    const afterMs = raised.map((row) => sourceMs(row) - day.wet.atMs);
    expect(afterMs[0]).toBeGreaterThan(0);
    // Nobody else of the hall speaks in that half minute, and on the source clock time goes on only when someone does.
    expect(afterMs[0]).toBeLessThanOrEqual(60_000);
  });
});
