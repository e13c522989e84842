import { connectAsync } from 'mqtt';

export interface Bare {
  readonly messages: number;
  readonly cpuMs: number;
  /** So that no engine may leave the parsing out. */
  readonly sum: number;
}

/** Child process: the least that any receiver must do. Answers each message of the parent with its counts. */
export async function run([url = '']: readonly string[]): Promise<void> {
  const client = await connectAsync(url, { reconnectPeriod: 0 });
  let messages = 0;
  let sum = 0;
  client.on('message', (_topic, bytes) => {
    const body = JSON.parse(bytes.toString()) as Record<string, number>;
    sum += body['supply.temperature'] ?? 0;
    messages++;
  });
  await client.subscribeAsync('bench/+', { qos: 0 });
  process.on('message', () => {
    const { user, system } = process.cpuUsage();
    process.send?.({ messages, cpuMs: (user + system) / 1000, sum } satisfies Bare);
  });
  process.on('disconnect', () => process.exit(0));
  process.send?.({ messages, cpuMs: 0, sum } satisfies Bare);
}
