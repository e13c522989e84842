import { alarmPublicationSchema, type AlarmPublication } from '@ebbline/shared/contract/alarm-publication';
import { connectClient } from '../../helpers/broker';
import { until } from '../../helpers/until';
import { postJson, type RunningApp } from '../app/running-app';
import type { Sender } from '../app/telemetry';

export interface Heard {
  readonly topic: string;
  /** Null: the topic was cleared. */
  readonly told: AlarmPublication | null;
  /** The broker had it before we asked. */
  readonly retained: boolean;
}

export interface Listener {
  readonly heard: Heard[];
  /** Of one entry, in a word each: the state, `cleared`, marked where it is told again. */
  of(entry: string): string[];
  stop(): Promise<void>;
}

/** Any MQTT client that asks for alarms, and checks each against the documented shape. */
export async function listen(url: string, filter: string, options = {}): Promise<Listener> {
  const { client, stop } = await connectClient({ url }, options);
  const heard: Heard[] = [];
  client.on('message', (topic, payload, { retain }) => {
    const told = payload.length === 0 ? null : alarmPublicationSchema.parse(JSON.parse(payload.toString('utf8')));
    heard.push({ topic, told, retained: retain });
  });
  await client.subscribeAsync(filter, { qos: 1 });
  const word = ({ told }: Heard): string =>
    told === null ? 'cleared' : `${told.alarm.state}${told.change === null ? ' again' : ''}`;
  return { heard, stop, of: (entry) => heard.filter(({ topic }) => topic.endsWith(`:${entry}`)).map(word) };
}

/**
 * What a broker hands to one who comes only now: all that it has come before what is asked for second, the program's own
 * retained word that it is online.
 */
export async function retainedAt(url: string, filter: string, site: string, options = {}): Promise<readonly string[]> {
  const { client, stop } = await connectClient({ url }, options);
  const topics: string[] = [];
  try {
    client.on('message', (topic, payload, { retain }) => {
      if (retain && payload.length > 0) topics.push(topic);
    });
    const status = `ebbline/${site}/backend/status`;
    await client.subscribeAsync(filter, { qos: 1 });
    await client.subscribeAsync(status, { qos: 1 });
    await until(() => topics.includes(status), { what: 'the word that the program is online' });
    return topics.filter((topic) => topic !== status);
  } finally {
    await stop();
  }
}

const startMs = Date.UTC(2031, 4, 6, 7, 8, 9);

/** Seconds of telemetry of m1 on the source clock, water found or not. */
export async function seconds(sender: Sender, from: number, to: number, leak: 'wet' | 'dry'): Promise<void> {
  for (let second = from; second < to; second++) await sender.m1(startMs + second * 1000, { leak });
}

/** Once the program's source clock stands at this second of the telemetry. */
export async function judgedTo(app: Pick<RunningApp, 'get'>, second: number): Promise<void> {
  const last = new Date(startMs + second * 1000).toISOString();
  await until(async () => (await app.get<{ clock: { now: string | null } }>('/api/health')).clock.now === last, {
    what: `the source clock at ${last}`,
  });
}

export async function act(app: { send: RunningApp['send'] }, alarm: string, action: string, more = {}): Promise<void> {
  const path = `/api/alarms/${encodeURIComponent(alarm)}/${action}`;
  const reply = await app.send(path, postJson({ operator: 'Ines', ...more }));
  if (!reply.ok) throw new Error(`${action}: ${reply.status} ${await reply.text()}`);
}
