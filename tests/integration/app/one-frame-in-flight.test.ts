import type { HallFrame } from '@ebbline/shared/contract/live-feed';
import { describe, expect, it } from 'vitest';
import { stopAfterEach } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { connectScreen, startApp, type RunningApp } from './running-app';
import { connectSender, type Sender } from './telemetry';

const keep = stopAfterEach();

const flowShown = (frame: unknown): number | null => {
  const points = (frame as { points?: readonly { id: string; value: number | null }[] }).points ?? [];
  return points.find(({ id }) => id === 'loop.flow')?.value ?? null;
};

async function appAndSender(): Promise<{ app: RunningApp; sender: Sender }> {
  const app = keep(await startApp());
  return { app, sender: keep(await connectSender(app.mqttUrl)) };
}

describe('the live feed', () => {
  it('sends a client that takes nothing one frame, and then the newest', async () => {
    const { app, sender } = await appAndSender();
    const slow = keep(connectScreen(app.url, false));
    const quick = keep(connectScreen(app.url));
    slow.show({ screen: 'loop', unit: 'm1' });
    quick.show({ screen: 'loop', unit: 'm1' });
    await until(() => slow.frames.length === 1 && quick.frames.length > 0);
    for (let i = 1; i <= 5; i++) {
      await sender.m1(Date.now(), { flow: 300 + i });
      await until(() => quick.frames.some((frame) => Math.abs((flowShown(frame) ?? 0) - (300 + i) / 60_000) < 1e-12));
    }
    expect(slow.frames).toHaveLength(1);
    slow.held.shift()?.();
    await until(() => slow.frames.length === 2);
    expect(flowShown(slow.frames[1])).toBeCloseTo(305 / 60_000, 12);
    const [first, second] = slow.frames;
    expect((second?.sequence ?? 0) - (first?.sequence ?? 0)).toBeGreaterThan(1);
  });

  it('goes on by itself at least each second, so that a screen can tell a program that is gone', async () => {
    const { app } = await appAndSender();
    const screen = keep(connectScreen(app.url));
    screen.show({ screen: 'alarms' });
    await until(() => screen.frames.length >= 3);
    expect(screen.frames.map(({ sequence }) => sequence)).toEqual(screen.frames.map((_, i) => i + 1));
  });

  it('shows the newest request only, and one snapshot after a reconnection', async () => {
    const { app } = await appAndSender();
    const screen = keep(connectScreen(app.url));
    screen.show({ screen: 'alarms' });
    screen.show({ screen: 'hall', hall: 'north' });
    await until(() => screen.frames.some((frame) => frame.screen === 'hall'));
    const from = screen.frames.findIndex((frame) => frame.screen === 'hall');
    await until(() => screen.frames.length > from + 2);
    expect(new Set(screen.frames.slice(from).map((frame) => frame.screen))).toEqual(new Set(['hall']));
    screen.stop();
    const again = keep(connectScreen(app.url, false));
    again.show({ screen: 'hall', hall: 'north' });
    await until(() => again.frames.length === 1);
    expect((again.frames[0] as HallFrame).loops.map(({ unit }) => unit)).toEqual(['m1', 'm2']);
  });

  it.for([
    [{ screen: 'hall', hall: 'south' }, 'VIEW_UNKNOWN_HALL'],
    [{ screen: 'loop', unit: 'm9' }, 'VIEW_UNKNOWN_UNIT'],
    [{ screen: 'loop' }, 'VIEW_MALFORMED'],
    [{ screen: 'loop', unit: 'm1', more: 1 }, 'VIEW_MALFORMED'],
    ['loop', 'VIEW_MALFORMED'],
    [null, 'VIEW_MALFORMED'],
  ] as const)('refuses %j', async ([asked, code]) => {
    const { app } = await appAndSender();
    const screen = keep(connectScreen(app.url));
    screen.socket.emit('show', asked as never);
    await until(() => screen.refusals.length === 1);
    expect(screen.refusals[0]).toMatchObject({ code });
    expect(app.faults).toEqual([]);
  });
});
