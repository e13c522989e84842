import type { HistoryColumns } from '@ebbline/shared/contract/http-api';
import { describe, expect, test } from 'vitest';
import { unitId } from '../bench/bench-site';
import { startBroker } from '../helpers/broker';
import { type Ebbline, startEbbline } from '../helpers/ebbline';
import { stopAfterEach } from '../helpers/stop-after';
import { temporaryFolder } from '../helpers/temporary-folder';
import { until } from '../helpers/until';
import { dataFolder } from './data-folder';
import { expectWholeChain, journalOf } from '../helpers/journal-of';
import { keepDoing, startSender, writeSite } from './row-of-units';

const units = 24;
const keep = stopAfterEach();

interface Confirmed {
  readonly alarm: string;
  readonly operator: string;
  readonly comment: string;
}

/** Acknowledges one after the other in four lanes; kills the program when `killAfter` answers are in hand. */
async function acknowledgeUntilKilled(
  ebbline: Ebbline,
  alarms: readonly string[],
  killAfter: number,
): Promise<Confirmed[]> {
  const confirmed: Confirmed[] = [];
  const waiting = [...alarms];
  const lane = async (): Promise<void> => {
    for (let alarm = waiting.shift(); alarm !== undefined; alarm = waiting.shift()) {
      const act = { operator: `Operator ${waiting.length}`, comment: `seen ${alarm}` };
      try {
        const reply = await ebbline.post(`/api/alarms/${encodeURIComponent(alarm)}/acknowledge`, act);
        if (reply.status === 200) confirmed.push({ alarm, ...act });
      } catch {
        return;
      }
      if (confirmed.length === killAfter) ebbline.child.kill('SIGKILL');
    }
  };
  await Promise.all([lane(), lane(), lane(), lane()]);
  await ebbline.exit;
  return confirmed;
}

describe('kill −9', () => {
  test.for([1, 7, 18])(
    'after %i confirmed acknowledgements the journal holds every one, by value',
    async (killAfter) => {
      const data = keep(await dataFolder());
      const files = keep(await temporaryFolder());
      const broker = keep(await startBroker());
      const env = {
        EBBLINE_SITE: await writeSite(files.path, units),
        EBBLINE_MQTT_URL: broker.url,
        EBBLINE_SIMULATOR: 'off',
      };
      const first = keep(await startEbbline({ data: data.path, env }));
      const sender = keep(await startSender(broker.url, units));
      const wet = keep(keepDoing(() => sender.sendAll({ 'water.found': 1 }), 500));
      const raised = async (): Promise<string[]> =>
        (await first.alarms())
          .filter(({ entry, state }) => entry === 'WATER-1' && state === 'unacknowledged')
          .map(({ id }) => id);
      const alarms = await until(async () => ((await raised()).length === units ? raised() : null), {
        everyMs: 100,
        what: 'the alarms',
      });

      const confirmed = await acknowledgeUntilKilled(first, alarms, killAfter);
      expect(confirmed.length).toBeGreaterThanOrEqual(killAfter);
      await wet.stop();

      const second = keep(await startEbbline({ data: data.path, env }));
      const rows = await journalOf(second);
      const acts = rows.map(({ alarm, actor, reason }) => ({ alarm, operator: actor, comment: reason }));
      for (const act of confirmed) expect(acts).toContainEqual(act);
      expectWholeChain(rows);

      const standing = new Map((await second.alarms()).map((alarm) => [alarm.id, alarm]));
      for (const id of alarms) expect(standing.has(id)).toBe(true);
      for (const { alarm, operator } of confirmed)
        expect(standing.get(alarm)).toMatchObject({ acknowledgedBy: operator });
    },
  );

  test('loses at most two seconds of history', async () => {
    const data = keep(await dataFolder());
    const files = keep(await temporaryFolder());
    const broker = keep(await startBroker());
    const env = {
      EBBLINE_SITE: await writeSite(files.path, 2),
      EBBLINE_MQTT_URL: broker.url,
      EBBLINE_SIMULATOR: 'off',
    };
    const first = keep(await startEbbline({ data: data.path, env }));
    const sender = keep(await startSender(broker.url, 2));
    const sentAtMs: number[] = [];
    const beat = keep(
      keepDoing(async () => {
        const atMs = Date.now();
        await sender.sendAll({}, atMs);
        sentAtMs.push(atMs);
      }, 200),
    );
    const fromMs = Date.now();
    const history = async (ebbline: Ebbline): Promise<number[]> => {
      const toMs = Math.ceil(Date.now() / 1000) * 1000;
      const start = Math.floor(fromMs / 1000) * 1000;
      const query = new URLSearchParams({
        unit: unitId(0),
        point: 'supply.temperature',
        from: new Date(start).toISOString(),
        to: new Date(toMs).toISOString(),
        buckets: String((toMs - start) / 1000),
      });
      const { start: starts, count } = await ebbline.get<HistoryColumns>(`/api/history?${query.toString()}`);
      return starts.filter((_, i) => (count[i] ?? 0) > 0).map((time) => Date.parse(time));
    };
    await until(async () => (await history(first)).length >= 6, { everyMs: 250, what: 'six seconds of history' });

    first.child.kill('SIGKILL');
    const killedMs = Date.now();
    await first.exit;
    await beat.stop();
    const sentBefore = Math.max(...sentAtMs.filter((at) => at <= killedMs));

    const second = keep(await startEbbline({ data: data.path, env }));
    const wanted = Math.floor((sentBefore - 2000) / 1000) * 1000;
    // A second in which this machine let nothing be sent is none that was lost.
    const sent = [...new Set(sentAtMs.map((at) => Math.floor(at / 1000) * 1000))].filter((at) => at < wanted);
    expect(sent.length).toBeGreaterThan(1);
    // What the program had not acknowledged is on its way again.
    await until(
      async () => {
        const kept = await history(second);
        return sent.every((at) => at < (kept[0] ?? Number.NaN) || kept.includes(at));
      },
      { everyMs: 250, what: 'every second that was sent in history' },
    );
    expect((await history(second))[0]).toBeLessThan(wanted);
  });
});
