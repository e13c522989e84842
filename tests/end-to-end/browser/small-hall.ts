import { fileURLToPath } from 'node:url';
import { type Ebbline, startEbbline } from '../../helpers/ebbline';
import { startBroker } from '../../helpers/broker';
import { connectSender } from '../../integration/app/telemetry';
import { dataFolder } from '../data-folder';
import { keepDoing } from '../row-of-units';

const smallSite = fileURLToPath(new URL('../../helpers/sites/small-site.yaml', import.meta.url));

export interface SmallHall {
  readonly ebbline: Ebbline;
  /** Where the units begin to send: in a hall that was started silent. */
  begin(): void;
  /** What unit m1 sends from now on. */
  change(fields: Readonly<Record<string, unknown>>): void;
  /** Something else on a topic, such as of a gateway that the site file does not name. */
  send(topic: string, payload: string): Promise<void>;
  stop(): Promise<void>;
}

export interface StillHall {
  readonly ebbline: Ebbline;
  stop(): Promise<void>;
}

/**
 * The real program on the small site by the plant's own time, which stands still once half a minute of telemetry is
 * in: whoever looks, and whenever, sees the same moment.
 */
export async function startStillHall(): Promise<StillHall> {
  const data = await dataFolder();
  const broker = await startBroker();
  const ebbline = await startEbbline({
    data: data.path,
    env: {
      EBBLINE_SITE: smallSite,
      EBBLINE_MQTT_URL: broker.url,
      EBBLINE_SIMULATOR: 'off',
      EBBLINE_CLOCK: 'source',
    },
  });
  const sender = await connectSender(broker.url);
  const startMs = Date.UTC(2026, 2, 3, 2);
  for (let second = 0; second < 30; second++) {
    await sender.m1(startMs + second * 1000);
    await sender.raw('small/north/barometer', '1013.25');
    await sender.raw('small/north/air', JSON.stringify({ t: 24, rh: 45 }));
  }
  return {
    ebbline,
    stop: async () => {
      await sender.stop();
      await ebbline.stop();
      await broker.stop();
      await data.stop();
    },
  };
}

/**
 * The real program on the small site, fed twice a second with numbers that stand still until they are changed.
 * `silent`: nothing is sent until it is begun.
 */
export async function startSmallHall({ silent = false } = {}): Promise<SmallHall> {
  const data = await dataFolder();
  const broker = await startBroker();
  const ebbline = await startEbbline({
    data: data.path,
    env: { EBBLINE_SITE: smallSite, EBBLINE_MQTT_URL: broker.url, EBBLINE_SIMULATOR: 'off' },
  });
  const sender = await connectSender(broker.url);
  let changed: Readonly<Record<string, unknown>> = {};
  let sending = !silent;
  const feed = keepDoing(async () => {
    if (!sending) return;
    await sender.m1(Date.now(), changed);
    await sender.raw('small/north/barometer', '1013.25');
    await sender.raw('small/north/air', JSON.stringify({ t: 24, rh: 45 }));
  }, 500);
  return {
    ebbline,
    begin() {
      sending = true;
    },
    change(fields) {
      changed = fields;
    },
    send: (topic, payload) => sender.raw(topic, payload),
    stop: async () => {
      await feed.stop();
      await sender.stop();
      await ebbline.stop();
      await broker.stop();
      await data.stop();
    },
  };
}
