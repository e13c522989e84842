import { afterAll, beforeAll, expect, it } from 'vitest';
import { InfluxHistoryStore } from '../../backend/src/connections/history-store/influx/influx-history-store';
import { startInfluxd, type TestInflux } from '../helpers/influxd';
import { suiteNeeding } from '../helpers/requirements';
import { temporaryFolder, type TemporaryFolder } from '../helpers/temporary-folder';
import { layout, plain, pressure, rowsOf, second, startMs } from './history-samples';

const refused = 5;
/** More than one request takes. */
const others = 12_000;
const upTo = (count: number, fromMs: number): number[] => Array.from({ length: count }, (_, i) => fromMs + i * second);
/** A field keeps its type within a shard of time; of a policy that keeps years that is a week. */
const weekMs = 7 * 24 * 3600 * second;

suiteNeeding(['influxdb'], 'history of which InfluxDB refuses a part', () => {
  let server: TestInflux;
  let folder: TemporaryFolder;
  beforeAll(async () => {
    server = await startInfluxd();
    folder = await temporaryFolder();
  });
  afterAll(async () => {
    await server.stop();
    await folder.stop();
  });

  it('keeps what came with it, and counts and names what the server refused', async () => {
    const options = { url: `${server.url}/refusing`, queueFolder: folder.path, rawDays: 36_500, minuteDays: 36_500 };
    const store = await InfluxHistoryStore.open(options);
    await store.useLayout(layout);
    const at = startMs + 10 * weekMs;
    const field = `${pressure.point} ${pressure.unitOfMeasure}`.replaceAll(' ', '\\ ');
    const line = `second,holder=${pressure.holder} ${field}=1i ${at}`;
    const typed = `${server.url}/write?db=refusing&rp=ebbline_seconds&precision=ms`;
    expect((await fetch(typed, { method: 'POST', body: line })).status).toBe(204);

    const later = at + 2 * weekMs;
    const times = [...upTo(refused, at), ...upTo(others, later)];
    const write = store.write(rowsOf(times.map((atMs) => ({ holder: 0, atMs, values: [1.5, null, null] }))));
    await expect(write).rejects.toMatchObject({ code: 'HISTORY_ROWS_REFUSED' });
    const query = { ...pressure, fromMs: later, toMs: later + others * second, buckets: 1 };
    expect(plain(await store.read(query)).count).toEqual([others]);
    const { state, rowsQueued, losses } = store.health();
    expect([state, rowsQueued]).toEqual(['ok', 0]);
    expect(losses).toEqual([
      expect.stringMatching(/^5 rows lost since the start: the server refused them .*type conflict/),
    ]);
    await store.close();
  });
});
