import type { Alarm, JournalRow } from '@ebbline/shared/contract/alarm';
import type { AlarmListing, SettingChanges, SettingsAudit } from '@ebbline/shared/contract/alarm-list';
import { describe, expect, it } from 'vitest';
import { adminName, beginSession, testPassword } from '../../helpers/sign-in';
import { stopAfterEach } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { until } from '../../helpers/until';
import { startApp, type RunningApp } from './running-app';
import { adminOf, askForChange, decide, personWith, setByTwo } from './set-by-two';
import { connectSender } from './telemetry';

const keep = stopAfterEach();
const startMs = Date.UTC(2031, 4, 6, 7, 8, 9);
const id = 'm1:MARGIN-1';
const at = (second: number): string => new Date(startMs + second * 1000).toISOString();
const variables = { EBBLINE_CLOCK: 'source' };
const scope = { kind: 'unit', id: 'm1' } as const;
const reason = 'the barometer of the hall is being changed';
const ofM1 = { entry: 'MARGIN-1', scope, reason };

async function telemetry(app: RunningApp, fromS: number, seconds: number): Promise<void> {
  const sender = await connectSender(app.mqttUrl);
  for (let second = fromS; second < fromS + seconds; second++) await sender.m1(startMs + second * 1000);
  await sender.stop();
}

/** Waits until the clock of the samples has come to a second. */
const judgedTo = (app: RunningApp, second: number): Promise<unknown> =>
  until(async () => (await app.get<{ time: string }>('/api/alarms')).time >= at(second));

const alarmOf = async (app: RunningApp): Promise<Alarm | undefined> =>
  (await app.get<{ alarms: Alarm[] }>('/api/alarms')).alarms.find((alarm) => alarm.id === id);
const journal = async (app: RunningApp): Promise<JournalRow[]> =>
  (await app.get<{ rows: JournalRow[] }>('/api/alarms/journal')).rows;
const raised = async (app: RunningApp): Promise<JournalRow[]> =>
  (await journal(app)).filter(({ alarm, to }) => alarm === id && to === 'unacknowledged');
const runningLimit = async (app: RunningApp): Promise<number | null | undefined> =>
  (await app.get<AlarmListing>('/api/alarm-list')).entries
    .find(({ entry }) => entry === 'MARGIN-1')
    ?.settings.find((setting) => setting.scope.kind === 'unit' && setting.scope.id === 'm1')?.running.limit;
const audit = async (app: RunningApp): Promise<SettingsAudit['findings']> =>
  (await app.get<SettingsAudit>('/api/alarm-list/audit')).findings;

describe('a limit that an engineer changes while the program runs', () => {
  it('raises the alarm exactly once, is on record and in the audit, outlives a restart, and clears once it is set back', async () => {
    const data = keep(await temporaryFolder());
    const app = await startApp({ variables, dataFolder: data.path });
    const engineer = await personWith(app, 'engineer', 'Ines');
    await telemetry(app, 0, 30);
    await judgedTo(app, 29);
    expect(await runningLimit(app)).toBe(6000);
    expect(await raised(app)).toEqual([]);
    expect(await audit(app)).toEqual([]);

    // The small site has some 12 kPa of margin, so that a limit of 40 kPa is passed.
    const done = await setByTwo(app, engineer, await adminOf(app), { ...ofM1, set: { limit: 40_000 } });
    expect(done).toMatchObject({
      status: 200,
      body: {
        actor: 'Ines',
        approvedBy: adminName,
        entry: 'MARGIN-1',
        old: { limit: 6000 },
        new: { limit: 40_000 },
        reason,
      },
    });
    expect(await alarmOf(app)).toBeUndefined();
    await telemetry(app, 30, 40);
    // Not of what was judged before the change; told after the 15 s on-delay of its hall.
    const told = await until(() => alarmOf(app));
    expect(told).toMatchObject({ state: 'unacknowledged', limit: 40_000 });
    expect(told.since >= at(29)).toBe(true);
    expect(Date.parse(told.stateSince) - Date.parse(told.since)).toBe(15_000);
    expect(await raised(app)).toHaveLength(1);

    const row = (await journal(app)).find(({ cause }) => cause === 'settingChanged');
    expect(row).toMatchObject({ kind: 'action', actor: 'Ines', entry: 'MARGIN-1', unit: 'm1', reason });
    expect(row?.facts).toMatchObject({
      setting: { scope, old: { limit: 6000 }, new: { limit: 40_000 }, link: 'order 17', approvedBy: adminName },
    });
    expect(await audit(app)).toMatchObject([
      { entry: 'MARGIN-1', scope, member: 'limit', authorised: 6000, running: 40_000, by: 'change' },
    ]);
    expect((await audit(app))[0]?.change).toMatchObject({ actor: 'Ines', reason });
    await app.stop();

    const again = keep(await startApp({ variables, dataFolder: data.path }));
    expect(await runningLimit(again)).toBe(40_000);
    await telemetry(again, 70, 40);
    await judgedTo(again, 109);
    expect(await alarmOf(again)).toMatchObject({ state: 'unacknowledged', limit: 40_000, since: told.since });
    expect(await raised(again)).toHaveLength(1);

    const asked = { ...ofM1, set: { limit: 6000 }, reason: 'the barometer is back' };
    const omar = await personWith(again, 'engineer', 'Omar');
    expect((await setByTwo(again, await adminOf(again), omar, asked)).status).toBe(200);
    await telemetry(again, 110, 40);
    await until(async () => (await alarmOf(again))?.state === 'returnedUnacknowledged');
    expect(await raised(again)).toHaveLength(1);
    expect(await audit(again)).toEqual([]);
    const { changes } = await again.get<SettingChanges>('/api/alarm-list/changes');
    expect(changes.map((one) => [one.actor, one.old.limit, one.new.limit])).toEqual([
      [adminName, 40_000, 6000],
      ['Ines', 6000, 40_000],
    ]);
    expect([...app.faults, ...again.faults]).toEqual([]);
  });

  it('is refused with what is wrong, and by right, and nothing is changed', async () => {
    const app = keep(await startApp({ variables }));
    const engineer = await personWith(app, 'engineer', 'Ines');
    const operator = await personWith(app, 'operator', 'Otto');
    await telemetry(app, 0, 3);
    await judgedTo(app, 2);
    for (const [asked, status, code] of [
      [{ entry: 'MARGIN-9', set: { limit: 1 } }, 404, 'SETTING_ENTRY_UNKNOWN'],
      [{ scope: { kind: 'unit', id: 'm9' }, set: { limit: 1 } }, 404, 'SETTING_SCOPE_UNKNOWN'],
      [{ entry: 'COM-1', scope: { kind: 'site' }, set: { onDelaySeconds: 1 } }, 409, 'SETTING_FIXED'],
      [{ set: { limit: 6000 } }, 409, 'SETTING_UNCHANGED'],
      [{ set: { limit: -500 } }, 409, 'SETTING_STEPS'],
      [{ set: { limit: 200_000 } }, 400, 'SETTING_RANGE'],
      [{ set: { limit: 7 }, unit_of_measure: 'kPa' }, 400, 'SETTING_UNIT_OF_MEASURE'],
      [{ set: { limit: 7000 }, reason: '' }, 400, 'BODY_MALFORMED'],
      [{ set: { limit: 7000 } }, 400, 'SETTING_LINK'],
    ] as const)
      expect(await askForChange(app, engineer, { ...ofM1, ...asked })).toMatchObject({ status, body: { code } });
    expect(await askForChange(app, operator, { ...ofM1, set: { limit: 7000 } })).toMatchObject({
      status: 403,
      body: { code: 'RIGHT_MISSING' },
    });
    expect(await runningLimit(app)).toBe(6000);
    expect((await app.get<SettingChanges>('/api/alarm-list/changes')).changes).toEqual([]);
  });

  it('waits for a second person where its class is highly managed, over a restart too', async () => {
    const data = keep(await temporaryFolder());
    const app = await startApp({ variables, dataFolder: data.path });
    const engineer = await personWith(app, 'engineer', 'Ines');
    const operator = await personWith(app, 'operator', 'Otto');
    const asked = { ...ofM1, set: { limit: 7000 }, link: 'order 17' };
    const held = await askForChange(app, engineer, asked);
    expect(held).toMatchObject({ status: 200, body: { actor: 'Ines', held: 'awaitsSecond' } });
    const { id: proposal } = held.body as { id: string };
    expect(await runningLimit(app)).toBe(6000);
    for (const [who, status, code] of [
      [engineer, 409, 'SETTING_SECOND'],
      [operator, 403, 'RIGHT_MISSING'],
    ] as const)
      expect(await decide(app, who, proposal, 'approve')).toMatchObject({ status, body: { code } });
    const rows = (await journal(app)).filter(({ cause }) => cause === 'settingProposed');
    expect(rows).toMatchObject([{ actor: 'Ines', facts: { setting: { new: { limit: 7000 } } } }]);
    await app.stop();

    const again = keep(await startApp({ variables, dataFolder: data.path }));
    const { changes, proposed } = await again.get<SettingChanges>('/api/alarm-list/changes');
    expect([changes, proposed, await runningLimit(again)]).toMatchObject([[], [{ id: proposal, actor: 'Ines' }], 6000]);
    // Whoever asked is still the first of the two.
    const entry = { name: 'Ines', password: testPassword };
    const ines = { name: 'Ines', proof: await beginSession(again.url, '/api/session/sign-in', entry) };
    expect(await decide(again, ines, proposal, 'approve')).toMatchObject({
      status: 409,
      body: { code: 'SETTING_SECOND' },
    });
    expect(await decide(again, await adminOf(again), proposal, 'approve')).toMatchObject({ status: 200 });
    expect(await runningLimit(again)).toBe(7000);
    await again.stop();

    const third = keep(await startApp({ variables, dataFolder: data.path }));
    expect((await third.get<SettingChanges>('/api/alarm-list/changes')).proposed).toEqual([]);
    const gone = await decide(third, await adminOf(third), proposal, 'approve');
    expect(gone).toMatchObject({ status: 404, body: { code: 'SETTING_PROPOSAL_UNKNOWN' } });
  });
});
