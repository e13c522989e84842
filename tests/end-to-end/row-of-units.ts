import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { benchSite, topicOf } from '../bench/bench-site';
import { payload } from '../bench/telemetry';
import { connectClient } from '../helpers/broker';

/** Writes a site file of so many equal units, fed by `sendAll`; gives its path. @param inHall how many stand in one hall; left out: as in the benches */
export async function writeSite(folder: string, units: number, inHall?: number): Promise<string> {
  const path = join(folder, 'row-of-units.yaml');
  await writeFile(path, benchSite(units, inHall));
  return path;
}

export interface Sender {
  /** One message for each unit, with these numbers in place of the usual ones. @param atMs their source time; default now */
  sendAll(changes?: Readonly<Record<string, number>>, atMs?: number): Promise<void>;
  send(unit: number, changes?: Readonly<Record<string, number>>, atMs?: number): Promise<void>;
  stop(): Promise<void>;
}

/** An outside MQTT client for a row of units. */
export async function startSender(url: string, units: number): Promise<Sender> {
  const { client, stop } = await connectClient({ url });
  let beat = 0;
  const send: Sender['send'] = async (unit, changes = {}, atMs = Date.now()) => {
    const body = { ...(JSON.parse(payload(unit, beat++, atMs)) as Record<string, number>), ...changes };
    await client.publishAsync(topicOf(unit), JSON.stringify(body), { qos: 1 });
  };
  return {
    send,
    sendAll: async (changes, atMs) => {
      await Promise.all(Array.from({ length: units }, (_, unit) => send(unit, changes, atMs)));
    },
    stop,
  };
}

/** Calls `act` again and again, `everyMs` apart, until stopped: telemetry comes whether someone looks or not. */
export function keepDoing(act: () => Promise<void>, everyMs: number): { stop(): Promise<void> } {
  let wanted = true;
  let wake = (): void => undefined;
  const loop = (async () => {
    while (wanted) {
      await act();
      await new Promise<void>((resolve) => {
        wake = resolve;
        setTimeout(resolve, everyMs);
      });
    }
  })();
  return {
    stop: async () => {
      wanted = false;
      wake();
      await loop;
    },
  };
}
