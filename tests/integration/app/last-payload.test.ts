import type { LastPayload, Setup } from '@ebbline/shared/contract/setup';
import { describe, expect, it } from 'vitest';
import { stopAfterAll } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { startApp } from './running-app';
import { connectSender, topicOfM1 } from './telemetry';

const keep = stopAfterAll();
const app = keep(await startApp());
const sender = keep(await connectSender(app.mqttUrl));
const last = (topic: string) => app.get<LastPayload>(`/api/intake/last?topic=${encodeURIComponent(topic)}`);

/** Asks again and again, as a screen does, while messages go on coming. */
const lastAfter = (topic: string, payload: string | Buffer) =>
  until(async () => {
    await sender.raw(topic, payload);
    const told = await last(topic);
    return told.receivedAt === null ? undefined : told;
  });

describe('the newest payload of a topic', () => {
  it('is shown as it came, with the reason where it was refused', async () => {
    expect(await last('small/m2/supply/t')).toMatchObject({ receivedAt: null, text: null });
    const told = await lastAfter('small/m2/supply/t', 'tepid');
    expect(told).toMatchObject({ bytes: 5, text: 'tepid', hex: null, cut: false });
    expect(told.refusal?.message).not.toBe('');
  });

  it('is shown as hexadecimal digits where it is no text', async () => {
    expect(await last('small/m2/return/t')).toMatchObject({ receivedAt: null });
    expect(await lastAfter('small/m2/return/t', Buffer.from([0xff, 0xfe, 0x00]))).toMatchObject({
      text: null,
      hex: 'fffe00',
    });
  });
});

describe('the points of a unit as they are set up', () => {
  it('say from where each is to come, and whether it does', async () => {
    await sender.m1(Date.now());
    const setup = await until(async () => {
      const told = await app.get<Setup>('/api/units/m1/setup');
      return told.points.some(({ arriving }) => arriving === 'arriving') ? told : undefined;
    });
    const flow = setup.points.find(({ reading }) => reading.id === 'loop.flow');
    expect(flow).toMatchObject({ topic: topicOfM1, path: ['flow'], arriving: 'arriving', title: 'Loop flow' });
    expect(setup.points.some(({ arriving }) => arriving === 'never')).toBe(true);
    expect(setup.points.every(({ topic, period }) => topic !== '' && period > 0)).toBe(true);
  });
});
