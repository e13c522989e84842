import { writeSync } from 'node:fs';
import { DuckDbHistoryStore } from '../../backend/src/connections/history-store/embedded/duckdb-history-store';
import { hour, layout, minute, pressures, startMs } from './history-samples';

/**
 * Writes 30 rows at the start of each 10 minutes of data, for ever, and prints each such write once it is confirmed.
 * After each hour of data it starts to seal beside the writing, and prints that too.
 */
const store = await DuckDbHistoryStore.open({ folder: process.argv[2] ?? '' });
await store.useLayout(layout);
for (let write = 0; ; write++) {
  await store.write(pressures(startMs + write * 10 * minute, 30, (index) => write * 30 + index));
  writeSync(1, `confirmed ${write}\n`);
  if (write % 6 === 5) {
    const hours = (write + 1) / 6;
    writeSync(1, `sealing ${hours}\n`);
    void store.maintain(startMs + hours * hour).then(() => writeSync(1, `sealed ${hours}\n`));
  }
}
