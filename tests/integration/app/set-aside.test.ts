import type { Alarm } from '@ebbline/shared/contract/alarm';
import type { AcknowledgeManyReply, SetAsideList } from '@ebbline/shared/contract/alarm-modes';
import type { AlarmsFrame } from '@ebbline/shared/contract/live-feed';
import { describe, expect, it } from 'vitest';
import { stopAfterEach } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { until } from '../../helpers/until';
import { connectScreen, postJson, startApp, type RunningApp } from './running-app';
import { connectSender } from './telemetry';

const keep = stopAfterEach();
const startMs = Date.UTC(2031, 4, 6, 7, 8, 9);
const alarm = 'm1:WATER-1';

const standing = async (app: RunningApp): Promise<Alarm[]> =>
  (await app.get<{ alarms: Alarm[] }>('/api/alarms')).alarms;
const setAside = async (app: RunningApp) =>
  (await app.get<SetAsideList>('/api/alarms/set-aside')).alarms.filter(({ by }) => by !== null);

/** Water found, on the source clock. */
async function wet(app: RunningApp, fromS: number, seconds: number): Promise<void> {
  const sender = await connectSender(app.mqttUrl);
  for (let second = fromS; second < fromS + seconds; second++)
    await sender.m1(startMs + second * 1000, { leak: 'wet' });
  await sender.stop();
}

const pathOf = (id: string, verb: string): string => `/api/alarms/${encodeURIComponent(id)}/${verb}`;
const act = (app: RunningApp, id: string, verb: string, body: object): Promise<Response> =>
  app.send(pathOf(id, verb), postJson(body));
const codeOf = async (reply: Response): Promise<unknown> => ((await reply.json()) as { code?: string }).code;

const reason = 'rope is being changed';

describe('an alarm that a person sets aside', () => {
  it('leaves the list and the counts, refuses what no longer fits, comes back over a restart, and is on record', async () => {
    const data = keep(await temporaryFolder());
    const variables = { EBBLINE_CLOCK: 'source' };
    const app = await startApp({ variables, dataFolder: data.path });
    const list = connectScreen(app.url);
    list.show({ screen: 'alarms' });
    await wet(app, 0, 30);
    await until(async () => (await standing(app)).find(({ id }) => id === alarm), { what: 'the alarm' });

    expect(await codeOf(await act(app, alarm, 'shelve', { reason, minutes: 90 }))).toBe('SHELVING_TOO_LONG');
    const shelved = await act(app, alarm, 'shelve', { operator: 'Ines', reason, minutes: 30 });
    expect(shelved.status).toBe(200);
    expect(await shelved.json()).toMatchObject({ id: alarm, mode: 'shelved', by: 'Ines', reason, active: true });
    expect((await standing(app)).map(({ id }) => id)).not.toContain(alarm);
    expect(await setAside(app)).toMatchObject([{ id: alarm, mode: 'shelved' }]);
    const frame = await until(() => {
      const last = list.frames.at(-1) as AlarmsFrame | undefined;
      return last?.alarms.every(({ id }) => id !== alarm) === true && (last.setAside ?? 0) > 0 ? last : undefined;
    });
    expect(frame.standing[1]).toBe(0);

    expect(await codeOf(await act(app, alarm, 'acknowledge', {}))).toBe('ALARM_SHELVED');
    expect(await codeOf(await act(app, alarm, 'shelve', { reason, minutes: 30 }))).toBe('ALARM_SHELVED_ALREADY');
    expect(await codeOf(await act(app, 'm1:MARGIN-1', 'unshelve', {}))).toBe('ALARM_NOT_SHELVED');
    expect(await codeOf(await act(app, 'm1:WATER-9', 'shelve', { reason, minutes: 30 }))).toBe('ALARM_UNKNOWN');
    expect(await codeOf(await act(app, alarm, 'shelve', { reason, minutes: 0 }))).toBe('BODY_MALFORMED');
    expect(await codeOf(await act(app, alarm, 'shelve', { reason: '', minutes: 5 }))).toBe('BODY_MALFORMED');
    list.stop();
    await app.stop();

    const again = keep(await startApp({ variables, dataFolder: data.path }));
    expect(await setAside(again)).toMatchObject([{ id: alarm, mode: 'shelved', by: 'Ines', reason }]);
    expect((await standing(again)).map(({ id }) => id)).not.toContain(alarm);
    const back = await act(again, alarm, 'unshelve', { operator: 'Ines' });
    expect(await back.json()).toEqual({ id: alarm, mode: 'inService', state: 'unacknowledged', active: true });
    expect(await setAside(again)).toEqual([]);
    const journal = await again.get<{ rows: { cause?: string; alarm: string | null; kind: string }[] }>(
      '/api/alarms/journal',
    );
    const causes = journal.rows.filter((row) => row.alarm === alarm).map(({ cause, kind }) => `${kind} ${cause}`);
    expect(causes).toEqual(['transition conditionTrue', 'action shelve', 'action unshelve']);
  });

  it('is taken out of service and returned by an admin, who may what an engineer may, saying what watches the plant meanwhile', async () => {
    const app = keep(await startApp({ variables: { EBBLINE_CLOCK: 'source' } }));
    await wet(app, 0, 5);
    const admin = await app.signIn.admin();
    const act = (id: string, verb: string, body: object): Promise<Response> =>
      fetch(`${app.url}${pathOf(id, verb)}`, {
        ...postJson(body),
        headers: { ...admin, 'content-type': 'application/json' },
      });
    const asked = { reason, interimMeasures: 'a round every hour', plannedEnd: '2031-05-07T07:00:00.000Z' };
    const out = await act('m1:MARGIN-1', 'take-out-of-service', asked);
    expect(out.status).toBe(200);
    expect(await out.json()).toMatchObject({
      mode: 'outOfService',
      state: 'normal',
      until: '2031-05-07T07:00:00.000Z',
      interimMeasures: 'a round every hour',
    });
    expect(await codeOf(await act('m1:MARGIN-1', 'take-out-of-service', asked))).toBe('ALARM_OUT_OF_SERVICE');
    expect(await codeOf(await act('m1:MARGIN-1', 'shelve', { reason, minutes: 5 }))).toBe('ALARM_OUT_OF_SERVICE');
    const past = { ...asked, plannedEnd: '2031-05-06T07:00:00.000Z' };
    expect(await codeOf(await act('m1:FLOW-2', 'take-out-of-service', past))).toBe('PLANNED_END_PAST');
    expect(await codeOf(await act('m1:FLOW-2', 'return-to-service', {}))).toBe('ALARM_NOT_OUT_OF_SERVICE');
    const back = await act('m1:MARGIN-1', 'return-to-service', { comment: 'sensor is back' });
    expect(await back.json()).toEqual({ id: 'm1:MARGIN-1', mode: 'inService', state: 'normal', active: false });
  });
});

describe('several alarms acknowledged at once', () => {
  it('are answered one by one: those that can be are, the others say why not', async () => {
    const app = keep(await startApp({ variables: { EBBLINE_CLOCK: 'source' } }));
    await wet(app, 0, 30);
    await until(async () => (await standing(app)).find(({ id }) => id === alarm), { what: 'the alarm' });
    const alarms = [alarm, 'm1:AIR-1', alarm];
    const reply = await app.send('/api/alarms/acknowledge', postJson({ alarms, comment: 'one event' }));
    expect(((await reply.json()) as AcknowledgeManyReply).answers).toMatchObject([
      { id: alarm, done: true, code: null },
      { id: 'm1:AIR-1', done: false, code: 'ALARM_UNKNOWN' },
    ]);
    const twice = await app.send('/api/alarms/acknowledge', postJson({ alarms: [alarm] }));
    expect(((await twice.json()) as AcknowledgeManyReply).answers).toMatchObject([
      { id: alarm, done: false, code: 'ALARM_ALREADY_ACKNOWLEDGED' },
    ]);
    const journal = await app.get<{ rows: { kind: string; reason: string | null }[] }>('/api/alarms/journal');
    expect(journal.rows.filter(({ kind, reason: why }) => kind === 'action' && why === 'one event')).toHaveLength(1);
  });
});
