import { describe, expect, it } from 'vitest';
import { brokerAddress } from '../../../backend/src/connections/mqtt-intake/broker-address';
import { RetainedLink } from '../../../backend/src/connections/mqtt-intake/retained-link';
import { stopAfterEach } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { intakeOn } from './intake-bench';
import { scriptedBroker } from './scripted-broker';

const keep = stopAfterEach();
const startMs = (): number => performance.now();
/** Whoever ends the program waits some seconds more for what is still to be written. */
const atMostMs = 5000;

describe('a broker that holds the connection and says nothing', () => {
  it('is left by the intake all the same, and its connection is broken', async () => {
    const broker = keep(await scriptedBroker());
    const under = intakeOn(broker.url);
    await under.start();
    expect(under.intake.state().state).toBe('connected');
    broker.fallSilent();
    const sinceMs = startMs();
    await under.stop();
    expect(startMs() - sinceMs).toBeLessThan(atMostMs);
    await until(() => under.intake.state().state === 'lost');
  });

  it('is left by the link for what it is to keep, and what it did not confirm is told as not had', async () => {
    const broker = keep(await scriptedBroker());
    const link = new RetainedLink({
      address: brokerAddress(broker.url),
      tlsFiles: null,
      clientId: 'ebbline-kept',
      random: () => 0.999,
    });
    let isAsked = false;
    let isLost = false;
    link.start('alarms/#', {
      connected: () => undefined,
      asked: () => (isAsked = true),
      held: () => undefined,
      lost: () => (isLost = true),
    });
    await until(() => isAsked);
    broker.fallSilent();
    const put = link.put('alarms/a', 'x');
    const sinceMs = startMs();
    await link.stop();
    expect(startMs() - sinceMs).toBeLessThan(atMostMs);
    expect(await put).toBe(false);
    expect(isLost).toBe(true);
  });
});
