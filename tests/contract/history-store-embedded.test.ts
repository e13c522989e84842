import { join } from 'node:path';
import { describe } from 'vitest';
import { DuckDbHistoryStore } from '../../backend/src/connections/history-store/embedded/duckdb-history-store';
import { temporaryFolder } from '../helpers/temporary-folder';
import { historyStoreContract } from './history-store.contract';

describe('the embedded history store', () => {
  historyStoreContract(async () => {
    const folder = await temporaryFolder();
    const open = () => DuckDbHistoryStore.open({ folder: join(folder.path, 'history') });
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
