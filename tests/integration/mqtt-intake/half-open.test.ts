import { expect, it } from 'vitest';
import { connectClient, startMosquitto } from '../../helpers/broker';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterEach } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { cuttableLink } from './cuttable-link';
import { intakeOn } from './intake-bench';

const keep = stopAfterEach();

suiteNeeding(['mosquitto'], 'a connection to the broker that is open at one end only', () => {
  // MQTT 5.0, section 3.1.2.10: a client that gets no PINGRESP within a reasonable time should close the connection.
  it('is noticed by the keep-alive, told as lost, and made anew; what was not acknowledged comes again, once', async () => {
    const broker = keep(await startMosquitto());
    const link = keep(await cuttableLink(broker.port));
    const { client: sender } = keep(await connectClient(broker));
    const under = keep(intakeOn(link.url, { keepaliveS: 5 }));
    await under.start();
    await sender.publishAsync('hall/a', 'committed', { qos: 1 });
    await until(() => under.gate.waiting() === 1);
    under.gate.release(under.gate.mark());
    // The broker has the acknowledgement once it delivers on.
    await sender.publishAsync('hall/a', 'not committed', { qos: 1 });
    await until(() => under.gate.waiting() === 1);

    link.silence(true);
    await sender.publishAsync('hall/a', 'while silent', { qos: 1 });
    await until(() => under.intake.state().state === 'lost', { what: 'the keep-alive' });
    expect(under.taken).toEqual(['committed', 'not committed']);
    link.cut();
    link.silence(false);
    await until(() => under.taken.includes('while silent'));
    expect(under.taken).toEqual(['committed', 'not committed', 'not committed', 'while silent']);
    expect(under.intake.state().state).toBe('connected');
  });

  it('is given up where the broker never lets us in, and tried again', async () => {
    const broker = keep(await startMosquitto());
    const link = keep(await cuttableLink(broker.port));
    link.silence(true);
    const under = keep(intakeOn(link.url, { connectWithinMs: 300 }));
    await under.start();
    expect(under.intake.state().state).toBe('lost');
    link.silence(false);
    await until(() => under.intake.state().state === 'connected');
  });
});
