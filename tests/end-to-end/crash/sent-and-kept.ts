import type { HistoryColumns } from '@ebbline/shared/contract/http-api';
import { topicOf, unitId } from '../../bench/bench-site';
import { payload } from '../../bench/telemetry';
import { connectClient, type TestBroker } from '../../helpers/broker';
import type { Ebbline } from '../../helpers/ebbline';

const secondMs = 1000;
/** Most that an answer of history is asked for at once. */
const mostBuckets = 1000;

export interface SentAndKept {
  /** Units that find water from now on; all others find none. */
  wet(units: readonly number[]): void;
  /** The longest run of seconds in [fromMs, toMs) that were sent for a unit and are not in history, in seconds. */
  longestHole(ebbline: Ebbline, unit: number, fromMs: number, toMs: number): Promise<number>;
  messages(): number;
  stop(): Promise<void>;
}

/** Delivery by the number of the unit: even ones at least once (QoS 1), odd ones at most once (QoS 0). */
export const isDeliveredAgain = (unit: number): boolean => unit % 2 === 0;

/** One message a unit and second, spread evenly, by the wall clock; remembers which seconds it sent. */
export async function startRememberingSender(broker: TestBroker, units: number): Promise<SentAndKept> {
  const { client, stop } = await connectClient(broker);
  const sent = Array.from({ length: units }, () => new Set<number>());
  const startMs = Date.now();
  let wetUnits = new Set<number>();
  let messages = 0;
  const sendDue = (): void => {
    const due = Math.floor(((Date.now() - startMs) * units) / secondMs);
    for (; messages < due; messages++) {
      const unit = messages % units;
      const nowMs = Date.now();
      const usual = JSON.parse(payload(unit, Math.floor(messages / units), nowMs)) as Record<string, number>;
      const told = JSON.stringify({ ...usual, 'water.found': wetUnits.has(unit) ? 1 : 0 });
      sent[unit]?.add(Math.floor(nowMs / secondMs) * secondMs);
      client.publish(topicOf(unit), told, { qos: isDeliveredAgain(unit) ? 1 : 0 });
    }
  };
  const timer = setInterval(sendDue, 10);

  const keptSeconds = async (ebbline: Ebbline, unit: number, fromMs: number, toMs: number): Promise<Set<number>> => {
    const kept = new Set<number>();
    for (let start = fromMs; start < toMs; start += mostBuckets * secondMs) {
      const end = Math.min(toMs, start + mostBuckets * secondMs);
      const query = new URLSearchParams({
        unit: unitId(unit),
        point: 'supply.temperature',
        from: new Date(start).toISOString(),
        to: new Date(end).toISOString(),
        buckets: String((end - start) / secondMs),
      });
      const columns = await ebbline.get<HistoryColumns>(`/api/history?${query.toString()}`);
      columns.start.forEach((time, i) => {
        if ((columns.count[i] ?? 0) > 0) kept.add(Date.parse(time));
      });
    }
    return kept;
  };

  return {
    wet: (chosen) => (wetUnits = new Set(chosen)),
    async longestHole(ebbline, unit, fromMs, toMs) {
      const from = Math.ceil(fromMs / secondMs) * secondMs;
      const to = Math.floor(toMs / secondMs) * secondMs;
      const kept = await keptSeconds(ebbline, unit, from, to);
      let [run, longest] = [0, 0];
      for (const second of [...(sent[unit] ?? [])].sort((a, b) => a - b)) {
        if (second < from || second >= to) continue;
        run = kept.has(second) ? 0 : run + 1;
        longest = Math.max(longest, run);
      }
      return longest;
    },
    messages: () => messages,
    stop: async () => {
      clearInterval(timer);
      await stop();
    },
  };
}
