import { expect, test } from 'vitest';
import { unitId } from '../../bench/bench-site';
import { startBroker } from '../../helpers/broker';
import { type Ebbline, startEbbline } from '../../helpers/ebbline';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterEach } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { until } from '../../helpers/until';
import { keepDoing, startSender, writeSite } from '../row-of-units';
import { Acknowledger } from './acknowledger';
import { expectAlarmsOfJournal, expectEachOnce } from './nothing-lost';
import { fillDisk, onSmallDisk } from './own-mounts';

const units = 8;
const keep = stopAfterEach();
const codesOf = async (ebbline: Ebbline): Promise<readonly string[]> =>
  (await ebbline.health()).reasons.map(({ code }) => code);
const waterAt = (unit: number): string => `${unitId(unit)}:WATER-1`;

suiteNeeding(['mounts'], 'a data folder on a disk that is full', () => {
  test('is told; alarms go on and are marked, nobody may act, and all is recorded in order once there is room', async () => {
    const broker = keep(await startBroker());
    const data = keep(await temporaryFolder());
    const files = keep(await temporaryFolder());
    const env = {
      EBBLINE_SITE: await writeSite(files.path, units),
      EBBLINE_MQTT_URL: broker.url,
      EBBLINE_SIMULATOR: 'off',
    };
    const ebbline = keep(await startEbbline({ data: data.path, env, under: onSmallDisk(data.path, 64) }));
    const sender = keep(await startSender(broker.url, units));
    const wet = new Set<number>();
    const tell = async (): Promise<void> => {
      for (let unit = 0; unit < units; unit++) await sender.send(unit, { 'water.found': wet.has(unit) ? 1 : 0 });
    };
    keep(keepDoing(tell, 300));
    const found = async (unit: number) => (await ebbline.alarms()).find(({ id }) => id === waterAt(unit));
    const operator = new Acknowledger();

    wet.add(0);
    await until(() => found(0), { everyMs: 100, what: 'the first alarm' });
    expect(await operator.acknowledge(ebbline, waterAt(0))).toBe(true);

    const giveBack = fillDisk(ebbline.pid, data.path);
    // What the journal's file has room for already is still recorded.
    const unrecorded: number[] = [];
    for (let unit = 1; unit < units && unrecorded.length < 3; unit++) {
      wet.add(unit);
      const alarm = await until(() => found(unit), { everyMs: 100, what: 'an alarm while the disk is full' });
      if (alarm.recorded === false) unrecorded.push(unit);
    }
    expect(unrecorded).toHaveLength(3);
    const [first = Number.NaN, , last = Number.NaN] = unrecorded;

    const told = async () => (await codesOf(ebbline)).includes('HISTORY_FAILING');
    await until(told, { everyMs: 200, what: 'history that can not be written' });
    const { status, reasons } = await ebbline.health();
    expect(status).toBe('degraded');
    expect(reasons.find(({ code }) => code === 'JOURNAL_FAILING')?.message).toContain('disk space');

    const refused = await ebbline.post(`/api/alarms/${encodeURIComponent(waterAt(first))}/acknowledge`, {
      operator: 'Crash test',
      comment: 'on a full disk',
    });
    expect([refused.status, await refused.json()]).toMatchObject([503, { code: 'JOURNAL_UNAVAILABLE' }]);
    expect(await found(first)).toMatchObject({ state: 'unacknowledged', recorded: false });

    wet.delete(last);
    const cleared = async () => (await found(last))?.state === 'latchedUnacknowledged';
    await until(cleared, { everyMs: 100, what: 'a condition that ends while the disk is full' });
    expect((await found(last))?.recorded).toBe(false);

    giveBack();
    const mended = async () => (await codesOf(ebbline)).every((code) => !/^(JOURNAL|HISTORY)_/.test(code));
    await until(mended, { everyMs: 200, what: 'health without journal and history' });
    for (const unit of unrecorded) expect((await found(unit))?.recorded).not.toBe(false);
    expect(await operator.acknowledge(ebbline, waterAt(first))).toBe(true);

    const rows = await expectAlarmsOfJournal(ebbline);
    expectEachOnce(rows, operator.told);
    expect(rows.filter(({ reason }) => reason === 'on a full disk')).toEqual([]);
    const changes = rows.filter(
      ({ kind, alarm }) => kind === 'transition' && unrecorded.map(waterAt).includes(alarm ?? ''),
    );
    expect(changes.map(({ alarm, to }) => `${alarm} ${to}`)).toEqual([
      ...unrecorded.map((unit) => `${waterAt(unit)} unacknowledged`),
      `${waterAt(last)} latchedUnacknowledged`,
    ]);
    const times = changes.map(({ sourceTime }) => Date.parse(sourceTime));
    expect(times).toEqual([...times].sort((a, b) => a - b));
  });
});
