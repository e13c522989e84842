import { writeSync } from 'node:fs';
import { DuckDbHistoryStore } from '../../backend/src/connections/history-store/embedded/duckdb-history-store';
import { hour, layout, minute, pressures, startMs } from './history-samples';

/**
 * Writes a row each 20 s of data, 20 minutes a commit, for ever, and prints how many commits are confirmed. Each
 * hour of data it starts to seal beside the writing, and prints that too.
 */
const store = await DuckDbHistoryStore.open({ folder: process.argv[2] ?? '' });
await store.useLayout(layout);
for (let commit = 1; ; commit++) {
  const fromMs = startMs + (commit - 1) * 20 * minute;
  for (let row = 0; row < 60; row += 30) {
    const first = (commit - 1) * 60 + row;
    await store.write(pressures(fromMs + row * 20_000, 30, (index) => first + index));
  }
  writeSync(1, `confirmed ${commit}\n`);
  if (commit % 3 === 0) {
    const nowMs = startMs + (commit / 3) * hour;
    writeSync(1, `sealing ${commit / 3}\n`);
    void store.maintain(nowMs).then(() => writeSync(1, `sealed ${commit / 3}\n`));
  }
}
