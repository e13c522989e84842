import type { Health, Intake } from '@ebbline/shared/contract/http-api';
import { describe, expect, it } from 'vitest';
import { startBroker } from '../../helpers/broker';
import { stopAfterEach } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { cuttableLink } from '../mqtt-intake/cuttable-link';
import { startApp } from './running-app';
import { connectSender } from './telemetry';

const keep = stopAfterEach();

describe('a broker that is lost', () => {
  it('is told in health without its credentials, and found again by itself', async () => {
    const broker = keep(await startBroker());
    const link = keep(await cuttableLink(broker.port));
    const url = link.url.replace('mqtt://', 'mqtt://reader:s3cret@');
    const app = keep(await startApp({ variables: { EBBLINE_MQTT_URL: url } }));
    const health = () => app.get<Health>('/api/health');
    expect((await health()).broker).toMatchObject({ state: 'connected', embedded: false });

    link.allow(false);
    link.cut();
    const lost = await until(async () => ((await health()).broker.state === 'lost' ? health() : null));
    expect(lost.status).toBe('degraded');
    expect(lost.reasons.map(({ code }) => code)).toContain('BROKER_LOST');
    expect(JSON.stringify([lost, app.said])).not.toMatch(/s3cret|reader/);

    link.allow(true);
    await until(async () => (await health()).broker.state === 'connected');
    const sender = keep(await connectSender(broker.url));
    await sender.m1(Date.now());
    await until(async () => (await app.get<Intake>('/api/intake')).samples > 0);
  });
});
