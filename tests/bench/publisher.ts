import { connectAsync } from 'mqtt';
import { topicOf } from './bench-site';
import { payload } from './telemetry';

export interface Sent {
  readonly messages: number;
  /** How far the sender itself fell behind its plan, ms; a bench whose sender is late measures the sender. */
  readonly lateMs: number;
}

/** Child process: one message a unit a second, spread evenly; tells what it sent each second. Ends on disconnect. */
export async function run([url = '', unitsText = '0']: readonly string[]): Promise<void> {
  const units = Number(unitsText);
  const client = await connectAsync(url, { reconnectPeriod: 0 });
  const start = Date.now();
  let sent = 0;
  const publishDue = (): void => {
    const due = Math.floor(((Date.now() - start) * units) / 1000);
    for (; sent < due; sent++) {
      const unit = sent % units;
      client.publish(topicOf(unit), payload(unit, Math.floor(sent / units), Date.now()), { qos: 0 });
    }
  };
  setInterval(publishDue, 10);
  setInterval(() => {
    const lateMs = Date.now() - start - (sent * 1000) / units;
    process.send?.({ messages: sent, lateMs } satisfies Sent);
  }, 1000);
  process.on('disconnect', () => process.exit(0));
}
