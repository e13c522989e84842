import type { ValueProvider } from '@nestjs/common';
import { TREND_DESK, type TrendDesk } from '../ports/trend-desk';
import { RunnerTrendDesk, type TrendDeskParts } from '../runner/trend-desk/trend-desk';

/** What is drawn beside the history of points, for the routes. */
export const openTrendDesk = ({
  journal,
  monotonicMs,
  nowMs,
  site,
  store,
}: TrendDeskParts): ValueProvider<TrendDesk> => ({
  provide: TREND_DESK,
  useValue: new RunnerTrendDesk({ journal, monotonicMs, nowMs, site, store }),
});
