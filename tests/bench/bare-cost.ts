import { launchMosquitto } from '../helpers/mosquitto';
import { probeRequirements } from '../helpers/probe-requirements';
import type { Bare } from './bare-subscriber';
import { nextMessage, startChild, type Child } from './child';

const seconds = (s: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, s * 1000));

async function ask(bare: Child): Promise<Bare> {
  const answer = nextMessage<Bare>(bare);
  bare.process.send('count');
  return answer;
}

/** CPU time of a bare MQTT subscriber that parses the same payloads, µs a message; null where there is no mosquitto. */
export async function bareCostUs(units: number, measureS: number): Promise<number | null> {
  const { mosquitto } = await probeRequirements();
  if (mosquitto.path === null) return null;
  const broker = await launchMosquitto(mosquitto.path);
  const bare = startChild('bare-subscriber', [broker.url]);
  try {
    await nextMessage(bare);
    const publisher = startChild('publisher', [broker.url, String(units)]);
    try {
      await seconds(5);
      const before = await ask(bare);
      await seconds(measureS);
      const after = await ask(bare);
      return ((after.cpuMs - before.cpuMs) * 1000) / (after.messages - before.messages);
    } finally {
      await publisher.stop();
    }
  } finally {
    await bare.stop();
    await broker.stop();
  }
}
