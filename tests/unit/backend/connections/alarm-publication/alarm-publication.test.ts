import type { Alarm, AlarmState } from '@ebbline/shared/contract/alarm';
import { alarmPublicationSchema } from '@ebbline/shared/contract/alarm-publication';
import { describe, expect, it } from 'vitest';
import { AlarmPublication } from '../../../../../backend/src/connections/alarm-publication/alarm-publication';
import type { AlarmNews } from '../../../../../backend/src/ports/notice';
import type { RetainedHearer, RetainedTopics } from '../../../../../backend/src/ports/retained-topics';
import { alarmOf, time } from './told-alarm';

const news = (alarm: Alarm, from: AlarmState = 'normal'): AlarmNews => ({
  alarm,
  setAside: null,
  change: { from, cause: 'conditionTrue', at: time, by: null },
});

/** A broker of which the test decides when it confirms, and what it holds. */
function bench(room?: number) {
  const standing: Alarm[] = [];
  const retained = new Map<string, string>();
  const told: string[] = [];
  const unconfirmed: ((had: boolean) => void)[] = [];
  let confirms = true;
  let hearer: RetainedHearer | null = null;
  const topics: RetainedTopics = {
    start: (_filter, hears) => void (hearer = hears),
    put(topic, payload) {
      if (payload === '') retained.delete(topic);
      else retained.set(topic, payload);
      told.push(payload === '' ? `${topic} cleared` : `${topic} ${stateIn(payload)}`);
      return confirms ? Promise.resolve(true) : new Promise((resolve) => unconfirmed.push(resolve));
    },
    stop: () => Promise.resolve(),
  };
  const publication = new AlarmPublication(
    { prefix: 'e', site: 's', standing: () => standing.map((alarm) => ({ alarm, setAside: null, change: null })) },
    topics,
    room,
  );
  publication.start();
  const link = hearer as RetainedHearer | null;
  if (link === null) throw new Error('nobody hears');
  const settled = () => new Promise<void>((resolve) => setImmediate(resolve));
  const stopConfirming = (): void => void (confirms = false);
  const confirm = (had: boolean): void => {
    confirms = had;
    for (const one of unconfirmed.splice(0)) one(had);
  };
  return { publication, link, retained, told, settled, stopConfirming, confirm, standing };
}

function stateIn(payload: string): string {
  const { alarm, change } = alarmPublicationSchema.parse(JSON.parse(payload));
  return `${alarm.state}${alarm.recorded === false ? ' not recorded' : ''}${change === null ? ' again' : ''}`;
}

describe('alarms over MQTT', () => {
  it('are told change by change, and cleared once they have gone and that was told', async () => {
    const { publication, link, told, retained, settled } = bench();
    link.connected();
    publication.tell([news(alarmOf('m1:W'))]);
    publication.tell([news(alarmOf('m1:W', 'acknowledged'), 'unacknowledged')]);
    expect([...retained.keys()]).toEqual(['e/s/alarms/m1:W']);
    publication.tell([news(alarmOf('m1:W', 'normal'), 'acknowledged')]);
    await settled();
    expect(told).toEqual([
      'e/s/alarms/m1:W unacknowledged',
      'e/s/alarms/m1:W acknowledged',
      'e/s/alarms/m1:W normal',
      'e/s/alarms/m1:W cleared',
    ]);
    expect(retained.size).toBe(0);
  });

  it('are told as they stand after each connection; what the broker has besides is told as gone and cleared', async () => {
    const { publication, link, told, retained, settled, standing } = bench();
    link.connected();
    publication.tell([news(alarmOf('m1:W')), news(alarmOf('m2:W'))]);
    await settled();
    const before = new Map(retained);
    link.lost();
    standing.push(alarmOf('m2:W', 'acknowledged'));
    told.length = 0;
    link.connected();
    for (const [topic, payload] of before) link.held(topic, payload);
    await settled();
    expect(told).toEqual([
      'e/s/alarms/m2:W acknowledged again',
      'e/s/alarms/m1:W normal again',
      'e/s/alarms/m1:W cleared',
    ]);
    expect([...retained.keys()]).toEqual(['e/s/alarms/m2:W']);
  });

  it('are told with their newest state where several came while the broker was away', async () => {
    const { publication, link, told, settled, standing } = bench();
    standing.push(alarmOf('m1:W', 'acknowledged'));
    publication.tell([news(alarmOf('m1:W'))]);
    publication.tell([news(alarmOf('m2:W'))]);
    publication.tell([news(alarmOf('m1:W', 'acknowledged'), 'unacknowledged')]);
    publication.tell([news(alarmOf('m2:W', 'normal'), 'unacknowledged')]);
    link.connected();
    await settled();
    expect(told).toEqual(['e/s/alarms/m1:W acknowledged', 'e/s/alarms/m2:W normal', 'e/s/alarms/m2:W cleared']);
  });

  it('wait where the broker does not confirm, and none is missed', async () => {
    const { publication, link, told, settled, stopConfirming, confirm } = bench();
    link.connected();
    stopConfirming();
    for (let i = 0; i < 120; i++) publication.tell([news(alarmOf(`m${i}:W`))]);
    expect(told).toHaveLength(50);
    confirm(true);
    await settled();
    expect(told.map((line) => /m\d+/.exec(line)?.[0])).toEqual(Array.from({ length: 120 }, (_, i) => `m${i}`));
  });

  it('that the journal has not taken stay with the broker when they go, until it has', async () => {
    const { publication, link, told, retained, settled } = bench();
    link.connected();
    publication.tell([news(alarmOf('m1:W', 'unacknowledged', { recorded: false }))]);
    publication.tell([news(alarmOf('m1:W', 'normal', { recorded: false }), 'unacknowledged')]);
    await settled();
    expect(retained.size).toBe(1);
    publication.tell([news(alarmOf('m1:W', 'normal'), 'unacknowledged')]);
    await settled();
    expect(told).toEqual([
      'e/s/alarms/m1:W unacknowledged not recorded',
      'e/s/alarms/m1:W normal not recorded',
      'e/s/alarms/m1:W normal',
      'e/s/alarms/m1:W cleared',
    ]);
  });

  it('that are set aside are told as such, standing or not, until they are brought back', async () => {
    const { publication, link, told, retained, settled } = bench();
    link.connected();
    const setAside = {
      mode: 'shelved',
      since: time,
      until: time,
      by: 'Ines',
      reason: 'sensor is being changed',
    } as const;
    publication.tell([{ ...news(alarmOf('m1:W', 'normal')), setAside }]);
    await settled();
    expect(alarmPublicationSchema.parse(JSON.parse([...retained.values()][0] ?? ''))).toMatchObject({ setAside });
    publication.tell([news(alarmOf('m1:W', 'normal'))]);
    await settled();
    expect(told.at(-1)).toBe('e/s/alarms/m1:W cleared');
    expect(retained.size).toBe(0);
  });

  it('clear what someone else left on their topics, and leave alone what is empty or their own', async () => {
    const { link, told, settled, standing } = bench();
    standing.push(alarmOf('m1:W'));
    link.connected();
    await settled();
    told.length = 0;
    link.held('e/s/alarms/x', 'not ours');
    link.held('e/s/alarms/y', '{"format":1}');
    link.held('e/s/alarms/z', '');
    link.held('e/s/alarms/m1:W', 'not ours');
    await settled();
    expect(told).toEqual(['e/s/alarms/x cleared', 'e/s/alarms/y cleared']);
  });

  it('that went while there was no room to tell of them are cleared once there is, without a new connection', async () => {
    const { publication, link, retained, settled, stopConfirming, confirm, standing } = bench(10);
    link.connected();
    const ids = Array.from({ length: 100 }, (_, at) => `m${at}:W`);
    for (const id of ids) {
      publication.tell([news(alarmOf(id))]);
      await settled();
    }
    expect(retained.size).toBe(100);
    stopConfirming();
    publication.tell(ids.map((id) => news(alarmOf(id, 'normal'), 'acknowledged')));
    publication.tell([news(alarmOf('m3:W'))]);
    standing.push(alarmOf('m3:W'));
    for (let round = 0; round < 20; round += 1) {
      confirm(true);
      await settled();
    }
    expect([...retained.keys()]).toEqual(['e/s/alarms/m3:W']);
  });

  it('are all told again as they stand where more waited than there is room for', async () => {
    const { publication, link, retained, settled, standing } = bench();
    for (let i = 0; i < 250; i++) {
      standing.push(alarmOf(`m${i}:W`));
      publication.tell([news(alarmOf(`m${i}:W`))]);
    }
    link.connected();
    for (let turn = 0; turn < 100 && retained.size < standing.length; turn++) await settled();
    expect(retained.size).toBe(standing.length);
  });
});
