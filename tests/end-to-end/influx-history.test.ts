import type { HistoryColumns } from '@ebbline/shared/contract/http-api';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { startBroker } from '../helpers/broker';
import { startEbbline } from '../helpers/ebbline';
import { startInfluxd } from '../helpers/influxd';
import { suiteNeeding } from '../helpers/requirements';
import { stopAfterAll } from '../helpers/stop-after';
import { until } from '../helpers/until';
import { connectSender } from '../integration/app/telemetry';
import { dataFolder } from './data-folder';

const smallSite = fileURLToPath(new URL('../helpers/sites/small-site.yaml', import.meta.url));

suiteNeeding(['influxdb'], 'the program with an InfluxDB of its own', () => {
  const keep = stopAfterAll();

  test('keeps what was measured there, answers for it, and still does after a start on an empty data folder', async () => {
    const influx = keep(await startInfluxd());
    const broker = keep(await startBroker());
    const env = {
      EBBLINE_SITE: smallSite,
      EBBLINE_MQTT_URL: broker.url,
      EBBLINE_SIMULATOR: 'off',
      EBBLINE_INFLUX_URL: `${influx.url}/quillmere`,
    };
    const first = await startEbbline({ data: keep(await dataFolder()).path, env });
    const sender = keep(await connectSender(broker.url));
    const seconds = 10;
    const startMs = Math.floor(Date.now() / 1000) * 1000 - 60_000;
    for (let i = 0; i < seconds; i++) await sender.m1(startMs + i * 1000, { flow: 300 + i });

    const query = new URLSearchParams({
      unit: 'm1',
      point: 'loop.flow',
      from: new Date(startMs).toISOString(),
      to: new Date(startMs + seconds * 1000).toISOString(),
      buckets: `${seconds}`,
    });
    const whole = (ebbline: typeof first): Promise<HistoryColumns> =>
      until(
        async () => {
          const columns = await ebbline.get<HistoryColumns>(`/api/history?${query.toString()}`);
          return columns.count.every((count) => count > 0) ? columns : null;
        },
        { everyMs: 100, what: 'every second in history' },
      );
    // 1 L = 10⁻³ m³ and 1 min = 60 s (SI brochure, table 8).
    const flows = Array.from({ length: seconds }, (_, i) => (300 + i) / 60_000);
    (await whole(first)).mean.forEach((flow, i) => expect(flow).toBeCloseTo(flows[i] ?? Number.NaN, 9));
    expect((await first.health()).reasons.map(({ code }) => code)).not.toContain('HISTORY_FAILING');
    await first.stop();

    const second = keep(await startEbbline({ data: keep(await dataFolder()).path, env }));
    (await whole(second)).mean.forEach((flow, i) => expect(flow).toBeCloseTo(flows[i] ?? Number.NaN, 9));
  });
});
