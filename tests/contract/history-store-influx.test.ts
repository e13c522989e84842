import { afterAll, beforeAll } from 'vitest';
import { InfluxHistoryStore } from '../../backend/src/connections/history-store/influx/influx-history-store';
import { startInfluxd, type TestInflux } from '../helpers/influxd';
import { suiteNeeding } from '../helpers/requirements';
import { temporaryFolder } from '../helpers/temporary-folder';
import { historyStoreContract } from './history-store.contract';

/** InfluxDB counts retention on its own clock; the samples of the suite lie in a fixed past. */
const forLong = { rawDays: 36_500, minuteDays: 36_500 };

suiteNeeding(['influxdb'], 'the history store in InfluxDB', () => {
  let server: TestInflux;
  let databases = 0;
  beforeAll(async () => {
    server = await startInfluxd();
  });
  afterAll(() => server.stop());

  historyStoreContract(async () => {
    const url = `${server.url}/test_${++databases}`;
    const folder = await temporaryFolder();
    const open = () => InfluxHistoryStore.open({ url, queueFolder: folder.path, ...forLong });
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
