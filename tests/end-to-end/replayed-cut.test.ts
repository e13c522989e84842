import type { JournalRow } from '@ebbline/shared/contract/alarm';
import { expect, test } from 'vitest';
import { connectClient, startBroker } from '../helpers/broker';
import { type Ebbline, startEbbline } from '../helpers/ebbline';
import { stopAfterAll } from '../helpers/stop-after';
import { until } from '../helpers/until';
import { dataFolder } from './data-folder';

interface Recorded {
  readonly topic: string;
  readonly payload: Buffer;
}

/** Five times as fast as life: a connection that lags a second is still fresh by the plant's own time. */
const speed = '5';
const commands = [
  { fault: 'cutServerHose', unit: 'S2', branch: 'r2', size: 'usual', action: 'start' },
  { fault: 'facilityFlowLost', unit: 'N1', size: 'large', action: 'start' },
  { fault: 'connectionLost', unit: 'N5', size: 'large', action: 'start' },
];
const keep = stopAfterAll();

/** Every change of an alarm, in order, by value; the time of record is left out, as it is the only thing that differs. */
async function changes(ebbline: Ebbline) {
  const { rows } = await ebbline.get<{ rows: JournalRow[] }>('/api/alarms/journal');
  return rows
    .filter(({ kind }) => kind === 'transition')
    .map(({ alarm, entry, unit, from, to, where, priority, sourceTime, value, limit }) => ({
      alarm,
      entry,
      unit,
      from,
      to,
      where,
      priority,
      sourceTime,
      value,
      limit,
    }));
}

test('a cut hose recorded from the broker raises the same alarms in the same order when replayed without the simulator', async () => {
  const broker = keep(await startBroker());
  const recorded: Recorded[] = [];
  const recorder = keep(await connectClient(broker));
  recorder.client.on('message', (topic, payload) => recorded.push({ topic, payload }));
  await recorder.client.subscribeAsync('quillmere/#', { qos: 0 });

  const live = await startEbbline({
    data: keep(await dataFolder()).path,
    env: {
      EBBLINE_CLOCK: 'source',
      EBBLINE_MQTT_URL: broker.url,
      EBBLINE_SIMULATOR: 'on',
      EBBLINE_SIMULATOR_SPEED: speed,
    },
  });
  const first = await until(
    async () => {
      // Again and again: the simulator may not listen yet, and refuses a fault that it has already.
      for (const command of commands) {
        await recorder.client.publishAsync('ebbline-simulator/command', JSON.stringify(command), { qos: 1 });
      }
      const seen = await changes(live);
      return ['AIR-1', 'TSUP-1', 'COM-1'].every((entry) => seen.some((change) => change.entry === entry)) ? seen : null;
    },
    { everyMs: 500, withinMs: 150_000, what: 'the alarms of all three faults' },
  ).finally(() => live.stop());
  await recorder.client.unsubscribeAsync('quillmere/#');

  // A broker of its own: nothing retained is left over from the first run.
  const second = keep(await startBroker());
  const replayed = keep(
    await startEbbline({
      data: keep(await dataFolder()).path,
      env: { EBBLINE_CLOCK: 'source', EBBLINE_MQTT_URL: second.url, EBBLINE_SIMULATOR: 'off' },
    }),
  );
  const player = keep(await connectClient(second));
  for (const { topic, payload } of recorded) await player.client.publishAsync(topic, payload, { qos: 1 });
  const again = await until(
    async () => {
      const seen = await changes(replayed);
      return seen.length >= first.length ? seen : null;
    },
    { everyMs: 100, what: 'the alarms of the replay' },
  );
  expect(again.slice(0, first.length)).toEqual(first);
});
