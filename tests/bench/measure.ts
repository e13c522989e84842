import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Intake } from '@ebbline/shared/contract/http-api';
import { startEbbline } from '../helpers/ebbline';
import type { Mosquitto } from '../helpers/mosquitto';
import { cpuOfTreeMs } from '../helpers/process-tree';
import { temporaryFolder } from '../helpers/temporary-folder';
import type { Bare } from './bare-subscriber';
import { benchSite, hallId, unitId } from './bench-site';
import { nextMessage, startChild } from './child';
import type { Sent } from './publisher';
import { openScreen, quantile } from './screens';

export interface Plan {
  readonly units: number;
  readonly warmUpS: number;
  readonly measureS: number;
  /** Of the backend, beside its own. */
  readonly env?: Readonly<Record<string, string>>;
}

export interface Measured {
  readonly units: number;
  readonly sentPerS: number;
  readonly takenPerS: number;
  /** Most that the sender fell behind its own plan, ms. */
  readonly senderLateMs: number;
  readonly backendCpuUsPerMessage: number;
  readonly bareCpuUsPerMessage: number;
  readonly backendCpuShare: number;
  readonly latencyP50Ms: number;
  readonly latencyP99Ms: number;
  readonly framesHall: number;
  readonly framesLoop: number;
  readonly memoryNote: string;
}

const seconds = (s: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, s * 1000));

/** One run: the whole backend with its stores, a Hall and a Loop screen, and a bare subscriber beside it. */
export async function measure(broker: Mosquitto, plan: Plan): Promise<Measured> {
  const folder = await temporaryFolder();
  const siteFile = join(folder.path, 'bench.yaml');
  await writeFile(siteFile, benchSite(plan.units));
  const ebbline = await startEbbline({
    data: join(folder.path, 'data'),
    env: { EBBLINE_SITE: siteFile, EBBLINE_MQTT_URL: broker.url, EBBLINE_SIMULATOR: 'off', ...plan.env },
  });
  const bare = startChild('bare-subscriber', [broker.url]);
  const hall = openScreen(ebbline.url, { screen: 'hall', hall: hallId(0) }, null);
  const loop = openScreen(ebbline.url, { screen: 'loop', unit: unitId(0) }, 'supply.temperature');
  try {
    await nextMessage(bare);
    const publisher = startChild('publisher', [broker.url, String(plan.units)]);
    try {
      let sent: Sent = { messages: 0, lateMs: 0 };
      let senderLateMs = 0;
      publisher.process.on('message', (message) => {
        sent = message as Sent;
        senderLateMs = Math.max(senderLateMs, sent.lateMs);
      });
      await seconds(plan.warmUpS);
      senderLateMs = 0;
      loop.latenciesMs.length = 0;
      const look = async () => {
        const answer = nextMessage<Bare>(bare);
        bare.process.send('count');
        const [{ messages: bareMessages, cpuMs: bareCpuMs }, intake] = await Promise.all([
          answer,
          ebbline.get<Intake>('/api/intake'),
        ]);
        return {
          at: performance.now(),
          sent: sent.messages,
          bareMessages,
          bareCpuMs,
          taken: intake.messages,
          cpuMs: cpuOfTreeMs(ebbline.pid),
          frames: [hall.frames(), loop.frames()] as const,
        };
      };
      const before = await look();
      await seconds(plan.measureS);
      const after = await look();
      const elapsedS = (after.at - before.at) / 1000;
      const health = await ebbline.health();
      return {
        units: plan.units,
        sentPerS: (after.sent - before.sent) / elapsedS,
        takenPerS: (after.taken - before.taken) / elapsedS,
        senderLateMs,
        backendCpuUsPerMessage: ((after.cpuMs - before.cpuMs) * 1000) / (after.taken - before.taken),
        bareCpuUsPerMessage: ((after.bareCpuMs - before.bareCpuMs) * 1000) / (after.bareMessages - before.bareMessages),
        backendCpuShare: (after.cpuMs - before.cpuMs) / 1000 / elapsedS,
        latencyP50Ms: quantile(loop.latenciesMs, 0.5),
        latencyP99Ms: quantile(loop.latenciesMs, 0.99),
        framesHall: after.frames[0] - before.frames[0],
        framesLoop: after.frames[1] - before.frames[1],
        memoryNote: `health ${health.status}${health.reasons.map(({ code }) => ` ${code}`).join('')}`,
      };
    } finally {
      await publisher.stop();
    }
  } finally {
    hall.stop();
    loop.stop();
    await bare.stop();
    await ebbline.stop();
    await folder.stop();
  }
}
