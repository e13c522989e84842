import type { HistoryColumns } from '@ebbline/shared/contract/http-api';
import { expect } from 'vitest';
import { topicOf, unitId } from '../../bench/bench-site';
import { payload } from '../../bench/telemetry';
import { connectClient, type TestBroker } from '../../helpers/broker';
import type { Ebbline } from '../../helpers/ebbline';
import { until } from '../../helpers/until';

const secondMs = 1000;
/** Seconds that are told without a gap; long enough to raise and to clear an alarm. */
const stretchSeconds = 20;
const hourMs = 3_600_000;
const pauseMs = 5 * hourMs;

const hasEnded = ({ child }: Ebbline): boolean => child.exitCode !== null || child.signalCode !== null;

export interface FastPlant {
  /** Tells some seconds of each unit, with water at one of them, then lets hours of source time pass. */
  stretch(): Promise<void>;
  /** Tells a second of the day before again, as a gateway does that was cut off. */
  tellAgain(): Promise<void>;
  /** The latest stretches are in history: each second once, none missing. */
  expectLatestKept(ebbline: Ebbline, stretches: number): Promise<void>;
  stop(): Promise<void>;
}

/** A row of units on the source clock, whose hours pass in as many milliseconds as a test likes. */
export async function startFastPlant(broker: TestBroker, units: number, startMs: number): Promise<FastPlant> {
  const { client, stop } = await connectClient(broker);
  let nowMs = startMs;
  let beat = 0;
  const stretches: number[] = [];

  const countsOf = async (ebbline: Ebbline, unit: number, fromMs: number): Promise<readonly number[]> => {
    const query = new URLSearchParams({
      unit: unitId(unit),
      point: 'supply.temperature',
      from: new Date(fromMs).toISOString(),
      to: new Date(fromMs + stretchSeconds * secondMs).toISOString(),
      buckets: String(stretchSeconds),
    });
    return (await ebbline.get<HistoryColumns>(`/api/history?${query.toString()}`)).count;
  };

  return {
    async stretch() {
      stretches.push(nowMs);
      const wet = stretches.length % units;
      const sent: Promise<unknown>[] = [];
      for (let second = 0; second < stretchSeconds; second++, nowMs += secondMs, beat++)
        for (let unit = 0; unit < units; unit++) {
          const usual = JSON.parse(payload(unit, beat, nowMs)) as Record<string, number>;
          const found = unit === wet && second < stretchSeconds / 2 ? 1 : 0;
          const told = JSON.stringify({ ...usual, 'water.found': found });
          sent.push(client.publishAsync(topicOf(unit), told, { qos: 1 }));
        }
      await Promise.all(sent);
      nowMs += pauseMs;
    },
    async tellAgain() {
      const dayBefore = stretches.filter((fromMs) => fromMs < nowMs - 30 * hourMs).at(-1);
      if (dayBefore === undefined) return;
      for (let unit = 0; unit < units; unit++)
        await client.publishAsync(topicOf(unit), payload(unit, beat, dayBefore), { qos: 1 });
    },
    async expectLatestKept(ebbline, count) {
      const whole = Array<number>(stretchSeconds).fill(1);
      for (const fromMs of stretches.slice(-count))
        for (let unit = 0; unit < units; unit++) {
          const kept = async () =>
            hasEnded(ebbline) || (await countsOf(ebbline, unit, fromMs)).every((times) => times > 0);
          const what = `${unitId(unit)} at ${new Date(fromMs).toISOString()} in history`;
          // A broker may have years of source time left to deliver.
          await until(kept, { everyMs: 50, withinMs: 600_000, what });
          expect(hasEnded(ebbline), 'the program ended while it was looked at').toBe(false);
          expect(await countsOf(ebbline, unit, fromMs)).toEqual(whole);
        }
    },
    stop,
  };
}
