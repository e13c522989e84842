import type { ValueProvider } from '@nestjs/common';
import type { Environment } from '../connections/config/environment';
import { RunningProgramWatch } from '../connections/program-watch/program-watch';
import type { Clock } from '../ports/clock';
import { PROGRAM_WATCH } from '../ports/program-watch';
import type { Ticker } from '../ports/ticker';
import { FEED_COUNTS, REQUEST_COUNTS } from '../ports/web-counts';
import { measuredHistory } from '../runner/watch/measured-history';
import { measuredJournal } from '../runner/watch/measured-journal';
import type { RunnerWatch } from '../runner/watch/system-watch';
import { TickFigures } from '../runner/watch/tick-figures';
import { FeedFigures, RequestFigures } from '../runner/watch/web-figures';
import { WriteFigures } from '../runner/watch/write-figures';
import type { ClosingStack } from './closing-stack';
import type { Stores } from './open-stores';

export interface OpenWatch {
  /** The same stores, with every commit measured. */
  readonly stores: Stores;
  readonly watch: RunnerWatch;
  readonly requests: RequestFigures;
  readonly feed: FeedFigures;
  readonly parts: readonly ValueProvider[];
}

/** Measures the program itself from now on. */
export function openWatch(
  { dataFolder }: Environment,
  stores: Stores,
  clock: Clock,
  ticker: Ticker,
  closing: ClosingStack,
): OpenWatch {
  const program = new RunningProgramWatch(dataFolder, clock, ticker);
  closing.add(() => program.stop());
  const journalWrites = new WriteFigures();
  const historyWrites = new WriteFigures();
  const requests = new RequestFigures();
  const feed = new FeedFigures();
  return {
    stores: {
      ...stores,
      journal: measuredJournal(stores.journal, journalWrites, clock),
      store: measuredHistory(stores.store, historyWrites, clock),
    },
    watch: { ticks: new TickFigures(), journalWrites, historyWrites, program },
    requests,
    feed,
    parts: [
      { provide: PROGRAM_WATCH, useValue: program },
      { provide: REQUEST_COUNTS, useValue: requests },
      { provide: FEED_COUNTS, useValue: feed },
    ],
  };
}
