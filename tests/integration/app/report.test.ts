import type { Alarm } from '@ebbline/shared/contract/alarm';
import type { Handover } from '@ebbline/shared/contract/handover';
import type { Note, NoteList } from '@ebbline/shared/contract/notes';
import { reportSchema, type Report } from '@ebbline/shared/contract/report';
import { describe, expect, it } from 'vitest';
import { stopAfterEach } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { until } from '../../helpers/until';
import { postJson, startApp, type RunningApp } from './running-app';
import { connectSender } from './telemetry';

const keep = stopAfterEach();
const startMs = Date.UTC(2031, 4, 6, 7);
const time = (second: number): string => new Date(startMs + second * 1000).toISOString();
const period = `from=${time(0)}&to=${time(180)}`;

const posted = async <Body>(app: RunningApp, path: string, body: object): Promise<Body> => {
  const reply = await app.send(path, postJson(body));
  expect(reply.status, `${path}: ${await reply.clone().text()}`).toBe(200);
  return (await reply.json()) as Body;
};
const reportOf = async (app: RunningApp, more = ''): Promise<Report> =>
  reportSchema.parse(await app.get(`/api/report?${period}${more}`));

const clockAt = (app: RunningApp, second: number) =>
  until(
    async () => ((await app.get<{ clock: { now: string | null } }>('/api/health')).clock.now ?? '') >= time(second),
    { what: 'the clock of the samples' },
  );

describe('the report of a shift', () => {
  it('has what stood, who opened what, notes, the handover and the figures, also after a restart', async () => {
    const folder = keep(await temporaryFolder());
    const options = { variables: { EBBLINE_CLOCK: 'source' }, dataFolder: folder.path };
    const app = await startApp(options);
    const sender = keep(await connectSender(app.mqttUrl));
    for (let second = 0; second < 120; second++)
      await sender.m1(startMs + second * 1000, { leak: second < 20 ? 'dry' : 'wet' });
    const water = await until(
      async () => (await app.get<{ alarms: Alarm[] }>('/api/alarms')).alarms.find(({ entry }) => entry === 'WATER-1'),
      { what: 'the alarm' },
    );
    await clockAt(app, 118);
    await posted(app, `/api/alarms/${encodeURIComponent(water.id)}/acknowledge`, { operator: 'Ines' });
    const permit = {
      unit: 'm1',
      branch: 'r1',
      until: time(3600),
      expectedInLeak: 0,
      operator: 'Ines',
      comment: 'hose',
    };
    await posted(app, '/api/permits', permit);
    const wrong = await posted<Note>(app, '/api/notes', { text: 'Rack 1 drips.', unit: 'm1', operator: 'Ines' });
    const told = { text: 'Rack 2 drips.', reason: 'counted wrong', operator: 'Omar' };
    const right = await posted<Note>(app, `/api/notes/${wrong.id}/correct`, told);
    const shift = { from: time(0), to: time(180), takerNamed: 'Omar', text: 'mind the drip', operator: 'Ines' };
    const { id } = await posted<Handover>(app, '/api/handovers', shift);
    await posted(app, `/api/handovers/${id}/take`, { operator: 'Omar' });

    const report = await until(
      async () => {
        const next = await reportOf(app);
        return next.lineUp.some(({ unit, asUsual }) => unit === 'm1' && asUsual > 0) ? next : null;
      },
      { what: 'the rows of history' },
    );
    const first = report.standing?.find((one) => one.first.id === water.id)?.first;
    expect(first).toMatchObject({
      title: water.title,
      acknowledgedBy: 'Ines',
      since: water.since,
      state: 'acknowledged',
    });
    expect(report.permits).toMatchObject([{ unit: 'm1', branch: 'r1', overdue: false, comment: 'hose' }]);
    expect(report.notes).toMatchObject([{ id: right.id, text: 'Rack 2 drips.', by: 'Omar', why: 'counted wrong' }]);
    expect(report.handovers).toMatchObject([{ by: 'Ines', takerNamed: 'Omar', taken: { by: 'Omar' } }]);
    expect(report.changes).toMatchObject([{ kind: 'permit', unit: 'm1', by: 'Ines' }]);
    expect(report.incomplete[0]).toContain('The period goes on');
    expect(report.energy?.total.heatRemoved.measuredSeconds).toBeGreaterThan(60);
    expect(report.performance?.annunciations).toBeGreaterThan(0);
    const margin = report.log.find(({ point, unit }) => point === 'vacuumMarginWorst' && unit === 'm1');
    expect(margin?.least).toBeCloseTo(report.smallestMargin?.value ?? 0, 6);
    expect(report.smallestMargin?.where).not.toBeNull();

    await app.stop();
    const again = keep(await startApp(options));
    // On the source clock there is no time before the first sample.
    await keep(await connectSender(again.mqttUrl)).m1(startMs + 121_000, { leak: 'wet' });
    await clockAt(again, 121);
    const after = await reportOf(again);
    expect(after.standing?.map((one) => one.first.id)).toEqual(report.standing?.map((one) => one.first.id));
    expect(after.handovers).toEqual(report.handovers);
    expect(after.notes).toEqual(report.notes);
    const { notes } = await again.get<NoteList>(`/api/notes?${period}&unit=m1`);
    expect(notes.map(({ text, correctedBy }) => [text, correctedBy])).toEqual([
      ['Rack 1 drips.', right.id],
      ['Rack 2 drips.', null],
    ]);
    expect((await again.send(`/api/report?${period}&hall=nowhere`, { method: 'GET' })).status).toBe(404);
    expect([...app.faults, ...again.faults]).toEqual([]);
  });
});
