import { Controller, Get, Inject, Query } from '@nestjs/common';
import { historyQuerySchema, type HistoryColumns } from '@ebbline/shared/contract/http-api';
import { HISTORY_STORE, type HistoryStore } from '../../ports/history-store';
import { LIVE_VIEW, type LiveView } from '../../ports/live-view';
import { checkInput } from './check-input';
import { historyProblem } from './history-problem';
import { ProblemError } from './problem-error';
import { toHistoryColumns } from './to-history-columns';

/** A point over time. */
@Controller('api')
export class HistoryController {
  constructor(
    @Inject(LIVE_VIEW) private readonly view: LiveView,
    @Inject(HISTORY_STORE) private readonly store: HistoryStore,
  ) {}

  @Get('history')
  async history(@Query() asked: unknown): Promise<HistoryColumns> {
    const query = checkInput(historyQuerySchema, asked, 'QUERY_MALFORMED');
    const found = this.view.findPoint(query.unit, query.point);
    if (found === 'unitUnknown')
      throw new ProblemError('UNIT_UNKNOWN', 'The site has no unit of this id; /api/units lists them.');
    if (found === 'pointUnknown') {
      throw new ProblemError('POINT_UNKNOWN', 'The unit has no point of this id; /api/units/{unit}/points lists them.');
    }
    const [fromMs, toMs] = [Date.parse(query.from), Date.parse(query.to)];
    if (!(toMs > fromMs))
      throw new ProblemError('QUERY_MALFORMED', 'to: must be later than from. See /api/openapi.json.');
    const columns = await this.read({ ...found, fromMs, toMs, buckets: query.buckets });
    return toHistoryColumns(query.unit, query.point, found.unitOfMeasure, columns);
  }

  private async read(query: Parameters<HistoryStore['read']>[0]): ReturnType<HistoryStore['read']> {
    try {
      return await this.store.read(query);
    } catch (cause) {
      throw historyProblem(cause, this.store.health().state === 'ok');
    }
  }
}
