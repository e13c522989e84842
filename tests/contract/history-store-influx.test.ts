import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe } from 'vitest';
import {
  InfluxHistoryStore,
  type InfluxHistoryOptions,
} from '../../backend/src/connections/history-store/influx/influx-history-store';
import { WorkerHistoryStore } from '../../backend/src/connections/history-store/worker-history-store';
import type { HistoryStore } from '../../backend/src/ports/history-store';
import { startInfluxd, type TestInflux } from '../helpers/influxd';
import { suiteNeeding } from '../helpers/requirements';
import { temporaryFolder } from '../helpers/temporary-folder';
import { historyStoreContract } from './history-store.contract';
import { bundle, type Bundle } from './journal-bundle';

/** InfluxDB counts retention on its own clock; the samples of the suite lie in a fixed past. */
const forLong = { rawDays: 36_500, minuteDays: 36_500 };

suiteNeeding(['influxdb'], 'the history store in InfluxDB', () => {
  let server: TestInflux;
  let databases = 0;
  beforeAll(async () => {
    server = await startInfluxd();
  });
  afterAll(() => server.stop());

  let built: Bundle;
  beforeAll(async () => {
    built = await bundle(new URL('../../backend/src/connections/history-store/history-worker.ts', import.meta.url));
  });
  afterAll(() => built.remove());

  type Open = (options: InfluxHistoryOptions) => Promise<HistoryStore>;
  const ways: readonly (readonly [string, Open])[] = [
    ['on this thread', (options) => InfluxHistoryStore.open(options)],
    [
      'in a worker, as the program has it',
      (options) =>
        WorkerHistoryStore.open({ workerFile: pathToFileURL(built.file), store: { kind: 'influx', options } }),
    ],
  ];
  describe.each(ways)('%s', (_where, openOne) => {
    historyStoreContract(async () => {
      const url = `${server.url}/test_${++databases}`;
      const folder = await temporaryFolder();
      const open = () => openOne({ url, queueFolder: folder.path, ...forLong });
      const subject = {
        store: await open(),
        async reopen() {
          await subject.store.close();
          subject.store = await open();
        },
        async remove() {
          await subject.store.close();
          await folder.stop();
        },
      };
      return subject;
    });
  });
});
