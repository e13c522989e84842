import { monitorEventLoopDelay } from 'node:perf_hooks';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { expect, it } from 'vitest';
import { stopAfterEach } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { connectScreen, startApp, type Screen } from './running-app';
import { connectSender } from './telemetry';

const keep = stopAfterEach();
const isLong = process.env['EBBLINE_TEST_LONG'] === '1';
/** How long the screen stands still: beyond the 45 s after which the server lets go of one that answers no ping. */
const stoppedForMs = 60_000;
const changes = 20;
const mostGrowthBytes = 20e6;
const mostLagRatio = 1.5;

/** The far end reads nothing any more, as a computer that sleeps; the connection stays open. */
function stopReading({ socket }: Screen): { resume(): void } {
  const { ws } = socket.io.engine.transport as unknown as { ws: { pause(): void; resume(): void } };
  ws.pause();
  return { resume: () => ws.resume() };
}

const flowIn = (frame: unknown): number =>
  (frame as { points?: readonly { id: string; value: number | null }[] }).points?.find(({ id }) => id === 'loop.flow')
    ?.value ?? Number.NaN;
const showsFlow = (frame: unknown, litresPerMinute: number): boolean =>
  Math.abs(flowIn(frame) - litresPerMinute / 60_000) < 1e-12;

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;
function memoryBytes(): number {
  collect();
  const { heapUsed, external } = process.memoryUsage();
  return heapUsed + external;
}

it(
  'a screen that stops reading is sent the newest state once when it reads on, and nothing of what lay between',
  { timeout: isLong ? 600_000 : 180_000 },
  async () => {
    const app = keep(await startApp());
    const sender = keep(await connectSender(app.mqttUrl));
    const slow = keep(connectScreen(app.url));
    const quick = keep(connectScreen(app.url));
    for (const screen of [slow, quick]) screen.show({ screen: 'loop', unit: 'm1' });
    await until(() => slow.frames.length > 0 && quick.frames.length > 0);
    let flow = 300;
    const change = async (): Promise<void> => {
      flow += 0.01;
      await sender.m1(Date.now(), { flow });
      await until(() => quick.frames.some((frame) => showsFlow(frame, flow)));
      quick.frames.length = 0;
    };
    /** The 99th percentile of how late the program's own thread comes to its work, ns. */
    const lagWhile = async (goOn: (count: number) => boolean): Promise<number> => {
      const lag = monitorEventLoopDelay({ resolution: 10 });
      lag.enable();
      for (let count = 0; goOn(count); count++) await change();
      lag.disable();
      return lag.percentile(99);
    };
    const forMs = (ms: number): (() => boolean) => {
      const endMs = performance.now() + ms;
      return () => performance.now() < endMs;
    };

    const usual = isLong ? await lagWhile(forMs(stoppedForMs)) : 0;
    const before = memoryBytes();
    const stopped = stopReading(slow);
    const seen = slow.frames.length;
    const lag = await lagWhile(isLong ? forMs(stoppedForMs) : (count) => count < changes);
    expect(slow.frames).toHaveLength(seen);
    expect(memoryBytes() - before).toBeLessThan(mostGrowthBytes);
    if (isLong) {
      console.log(
        `a screen stopped for 60 s: memory ${((memoryBytes() - before) / 1e6).toFixed(1)} MB, lag p99 × ${(lag / usual).toFixed(2)}`,
      );
      expect(lag / usual).toBeLessThan(mostLagRatio);
    }

    stopped.resume();
    await until(() => !slow.socket.connected || slow.frames.slice(seen).some((frame) => showsFlow(frame, flow)));
    if (slow.socket.connected) {
      const newest = slow.frames.findIndex((frame) => showsFlow(frame, flow));
      // At most the one that was under way when it stopped comes before it.
      expect(newest - seen).toBeLessThanOrEqual(1);
    } else {
      const again = keep(connectScreen(app.url, false));
      again.show({ screen: 'loop', unit: 'm1' });
      await until(() => again.frames.length === 1);
      expect(showsFlow(again.frames[0], flow)).toBe(true);
      expect(again.frames[0]?.sequence).toBe(1);
    }
    expect(app.faults).toEqual([]);
  },
);
