import type { Intake } from '@ebbline/shared/contract/http-api';
import { describe, expect, it } from 'vitest';
import { startBroker } from '../../helpers/broker';
import { stopAfterEach } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { startApp } from './running-app';
import { connectSender } from './telemetry';

const keep = stopAfterEach();

/** A program whose broker had one message for it already, and what it has counted after so many in all. */
async function listening() {
  const broker = keep(await startBroker());
  const sender = keep(await connectSender(broker.url));
  await sender.raw('small/m2/supply/t', '95', { retain: true });
  const app = keep(await startApp({ variables: { EBBLINE_MQTT_URL: broker.url } }));
  const counted = (messages: number): Promise<Intake> =>
    until(
      async () => {
        const intake = await app.get<Intake>('/api/intake');
        return intake.messages === messages ? intake : null;
      },
      { what: `${messages} messages` },
    );
  return { sender, counted };
}

describe('what any MQTT client sends at an odd time', () => {
  it('is counted by its rule: new, repeated, late, future, and kept by the broker', async () => {
    const { sender, counted } = await listening();
    expect(await counted(1)).toMatchObject({ samples: 1, late: 0, repeated: 0, retained: 1, refusals: [] });

    const atMs = Date.now();
    await sender.m1(atMs);
    const first = await counted(2);
    const points = first.samples - 1;
    expect(points).toBeGreaterThan(10);
    expect(first).toMatchObject({ late: 0, repeated: 0, retained: 1 });

    await sender.m1(atMs);
    expect(await counted(3)).toMatchObject({ samples: 1 + points, late: 0, repeated: points });

    // A clock that steps back, and a message that was held up, look alike: both are older than what is known.
    await sender.m1(atMs - 5000, { flow: 300 });
    await sender.m1(atMs - 6000, { flow: 301 });
    expect(await counted(5)).toMatchObject({ samples: 1 + points, late: 2 * points, repeated: points });

    // An hour ahead: beyond the 10 s that the site file allows where it says nothing else.
    await sender.m1(atMs + 3_600_000);
    const future = await counted(6);
    expect(future).toMatchObject({ samples: 1 + points, late: 2 * points, repeated: points, retained: 1 });
    expect(future.refusals.map(({ code, count }) => [code, count])).toEqual([['TIME_FUTURE', 1]]);

    // Live again: the clock that ran ahead for one message holds nothing up.
    await sender.m1(atMs + 1000);
    expect(await counted(7)).toMatchObject({ samples: 1 + 2 * points, late: 2 * points, repeated: points });
  });
});
