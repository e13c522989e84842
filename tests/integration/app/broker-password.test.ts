import { execFileSync } from 'node:child_process';
import { chmodSync } from 'node:fs';
import { join } from 'node:path';
import type { Health, Intake } from '@ebbline/shared/contract/http-api';
import { expect, it } from 'vitest';
import { connectClient, startMosquitto, type TestBroker } from '../../helpers/broker';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterEach } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';
import { until } from '../../helpers/until';
import { startApp } from './running-app';
import { telemetryOfM1, topicOfM1 } from './telemetry';

const keep = stopAfterEach();
/** With signs that a URL carries percent-encoded (RFC 3986, section 2.1). */
const password = 'Qu:iet/m@rgin';
const urlWith = (broker: TestBroker, secret: string): string =>
  broker.url.replace('mqtt://', `mqtt://hall-reader:${encodeURIComponent(secret)}@`);

/** mosquitto that lets nobody in without the password. */
async function guardedBroker(): Promise<TestBroker> {
  const folder = keep(await temporaryFolder());
  const file = join(folder.path, 'passwords');
  execFileSync('mosquitto_passwd', ['-b', '-c', file, 'hall-reader', password]);
  chmodSync(file, 0o644);
  return keep(await startMosquitto({ configuration: ['allow_anonymous false', `password_file ${file}`] }));
}

suiteNeeding(['mosquitto'], 'a broker with a password', () => {
  it('lets the program in with the right one, and its messages are taken', async () => {
    const broker = await guardedBroker();
    const app = keep(await startApp({ variables: { EBBLINE_MQTT_URL: urlWith(broker, password) } }));
    await until(async () => (await app.get<Health>('/api/health')).broker.state === 'connected', {
      what: 'the broker',
    });
    const { client } = keep(await connectClient(broker, { username: 'hall-reader', password }));
    await client.publishAsync(topicOfM1, telemetryOfM1(Date.now()), { qos: 1 });
    await until(async () => (await app.get<Intake>('/api/intake')).samples > 0, { what: 'a sample' });
  });

  it('refuses a wrong one: the reason stands in health, and the password nowhere', async () => {
    const wrong = 'Wr:ong/m@rgin';
    const broker = await guardedBroker();
    const app = keep(await startApp({ variables: { EBBLINE_MQTT_URL: urlWith(broker, wrong) } }));
    const health = await until(
      async () => {
        const now = await app.get<Health>('/api/health');
        return now.reasons.some(({ code }) => code === 'BROKER_LOST') ? now : null;
      },
      { everyMs: 100, what: 'the reason' },
    );
    expect(health.status).toBe('degraded');
    expect(health.broker.state).not.toBe('connected');
    // MQTT 3.1.1, section 3.2.2.3, return codes 4 and 5: bad user name or password, not authorised.
    expect(health.reasons[0]?.message).toMatch(/not authori[sz]ed|user name or password/i);
    const heard = JSON.stringify([health, app.said, app.faults.map(String), await app.get<unknown>('/api/intake')]);
    for (const secret of [wrong, encodeURIComponent(wrong), 'hall-reader']) expect(heard).not.toContain(secret);
  });
});
