import type { ValueProvider } from '@nestjs/common';
import type { Environment } from '../connections/config/environment';
import { RunningProgramWatch } from '../connections/program-watch/program-watch';
import type { CountingPipeline } from '../evaluation/pipeline/create-pipeline';
import type { Clock } from '../ports/clock';
import { DELIVERY_GATE, type DeliveryGate } from '../ports/delivery-gate';
import { OWN_FIGURES, type OwnFigures, type SiteFigures } from '../ports/own-figures';
import { PROGRAM_WATCH } from '../ports/program-watch';
import type { Ticker } from '../ports/ticker';
import { FEED_COUNTS, REQUEST_COUNTS } from '../ports/web-counts';
import { measuredHistory } from '../runner/watch/measured-history';
import { measuredJournal } from '../runner/watch/measured-journal';
import { siteFigures } from '../runner/watch/site-figures';
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
  /** For the rooms that tell of it. */
  readonly parts: (
    pipeline: CountingPipeline,
    gate: DeliveryGate,
    log: OwnFigures['log'],
    brokerRefused: OwnFigures['brokerRefused'],
  ) => readonly ValueProvider[];
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
  const ticks = new TickFigures();
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
    watch: { ticks, journalWrites, historyWrites, program },
    parts: (pipeline, gate, log, brokerRefused) => {
      const site = (): SiteFigures => siteFigures(pipeline);
      const figures: OwnFigures = { ticks, journalWrites, historyWrites, requests, feed, log, brokerRefused, site };
      return [
        { provide: OWN_FIGURES, useValue: figures },
        { provide: PROGRAM_WATCH, useValue: program },
        { provide: DELIVERY_GATE, useValue: gate },
        { provide: REQUEST_COUNTS, useValue: requests },
        { provide: FEED_COUNTS, useValue: feed },
      ];
    },
  };
}
