import type { ValueProvider } from '@nestjs/common';
import { TREND_DESK } from '../ports/trend-desk';
import { RunnerTrendDesk, type TrendDeskParts } from '../runner/trend-desk/trend-desk';

/** What is drawn beside the history of points, for the routes. */
export const openTrendDesk = ({ journal, nowMs, site, store }: TrendDeskParts): ValueProvider => ({
  provide: TREND_DESK,
  useValue: new RunnerTrendDesk({ journal, nowMs, site, store }),
});
