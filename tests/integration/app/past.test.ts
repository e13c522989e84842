import type { HallFrame, LoopFrame } from '@ebbline/shared/contract/live-feed';
import type { PastHall, PastMarks, PastUnit } from '@ebbline/shared/contract/past';
import { describe, expect, it } from 'vitest';
import { stopAfterEach } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { until } from '../../helpers/until';
import { connectScreen, postJson, startApp, type RunningApp } from './running-app';
import { connectSender, type Sender } from './telemetry';

const keep = stopAfterEach();
const startMs = Date.UTC(2031, 4, 6, 7, 8, 9);
const iso = (second: number): string => new Date(startMs + second * 1000).toISOString();
const variables = { EBBLINE_CLOCK: 'source' };

async function play(app: RunningApp, sender: Sender, from: number, to: number, changed = {}): Promise<void> {
  for (let second = from; second < to; second += 1) await sender.m1(startMs + second * 1000, changed);
  const reached = async (): Promise<boolean> =>
    (await app.get<{ time: string | null }>('/api/units/m1/points')).time === iso(to - 1);
  await until(reached, { what: `second ${to - 1}` });
}

/** What history has to the second only, and what it has not. */
const comparable = (picture: unknown): unknown =>
  JSON.parse(
    JSON.stringify(picture, (key, value: unknown) =>
      /^(age|time|now|reasons|expandedUncertainty|hour.*Pa|sequence|broker|calling|detail)$/.test(key)
        ? undefined
        : value,
    ),
  );

describe('a past second through the API', () => {
  it('is the live frame of that very second: values, alarms and permit', async () => {
    const folder = keep(await temporaryFolder());
    const app = keep(await startApp({ dataFolder: folder.path, variables }));
    const sender = keep(await connectSender(app.mqttUrl));
    await play(app, sender, 0, 30);
    await play(app, sender, 30, 50, { leak: 'wet' });
    const permit = { unit: 'm1', branch: 'r1', until: iso(3600), expectedInLeak: 5e-4, operator: 'Ines' };
    expect((await app.send('/api/permits', postJson(permit))).status).toBe(200);
    const screens = [keep(connectScreen(app.url)), keep(connectScreen(app.url))] as const;
    screens[0].show({ screen: 'hall', hall: 'north' });
    screens[1].show({ screen: 'loop', unit: 'm1' });
    const [hall, loop] = await until(() => {
      const [ofHall, ofLoop] = [screens[0].frames.at(-1) as HallFrame, screens[1].frames.at(-1) as LoopFrame];
      return ofHall?.time === iso(49) && ofLoop?.time === iso(49) && ofLoop.permits.length === 1
        ? ([ofHall, ofLoop] as const)
        : null;
    });
    expect(loop.alarms.map(({ entry }) => entry)).toContain('WATER-1');
    await play(app, sender, 50, 80, { flow: 200, supply: { t: 31, p: -20 } });

    const pastHall = await until(async () => {
      const found = await app.get<PastHall>(`/api/past/halls/north?at=${iso(49)}`);
      return found.silent === null ? found : null;
    });
    const pastUnit = await app.get<PastUnit>(`/api/past/units/m1?at=${iso(49)}`);
    expect(comparable(pastHall.frame)).toEqual(comparable(hall));
    expect(comparable(pastUnit.frame)).toEqual(comparable(loop));
    expect(pastUnit.frame.clock).toEqual({ kind: 'source', now: new Date(startMs + 49_999).toISOString() });

    // It stands as it was after a restart too, and what was not recorded meanwhile is told.
    await app.stop();
    const after = keep(await startApp({ dataFolder: folder.path, variables }));
    const anew = keep(await connectSender(after.mqttUrl));
    await play(after, anew, 300, 330);
    const again = await after.get<PastUnit>(`/api/past/units/m1?at=${iso(49)}`);
    expect(comparable(again.frame)).toEqual(comparable(pastUnit.frame));
    const dark = await until(async () => {
      const found = await after.get<PastUnit>(`/api/past/units/m1?at=${iso(200)}`);
      return found.silent?.to === null ? null : found;
    });
    expect(dark.silent).toEqual({ from: iso(80), to: iso(300) });
    expect(dark.frame.points.filter(({ value }) => value !== null)).toEqual([]);
    expect(dark.frame.permits).toHaveLength(1);
    const marks = await after.get<PastMarks>(`/api/past/marks?unit=m1&from=${iso(0)}&to=${iso(320)}`);
    expect(marks.gaps).toEqual([{ from: iso(80), to: iso(300) }]);
    expect(marks.marks.filter(({ alarm }) => alarm === 'm1:WATER-1').map(({ kind }) => kind)).toEqual([
      'raised',
      'gone',
    ]);
    expect([...app.faults, ...after.faults]).toEqual([]);
  });

  it('is refused with a problem that says why', async () => {
    const app = keep(await startApp({ variables }));
    const sender = keep(await connectSender(app.mqttUrl));
    await play(app, sender, 0, 10);
    for (const [path, status, code] of [
      [`halls/north?at=${iso(3600)}`, 400, 'PAST_NOT_YET'],
      [`units/m1?at=${iso(8)}`, 400, 'PAST_NOT_YET'],
      [`units/m1?at=${iso(-3600)}`, 404, 'PAST_BEFORE_RECORDS'],
      [`units/m9?at=${iso(0)}`, 404, 'UNIT_UNKNOWN'],
      [`halls/x?at=${iso(0)}`, 404, 'HALL_UNKNOWN'],
      ['halls/north?at=yesterday', 400, 'QUERY_MALFORMED'],
      ['halls/north', 400, 'QUERY_MALFORMED'],
      [`marks?from=${iso(0)}&to=${iso(86_401)}`, 400, 'QUERY_MALFORMED'],
      [`marks?unit=m9&from=${iso(0)}&to=${iso(9)}`, 404, 'UNIT_UNKNOWN'],
    ] as const) {
      const reply = await app.send(`/api/past/${path}`);
      expect([reply.status, await reply.json()], path).toMatchObject([status, { code }]);
    }
  });
});
