import { Controller, Get, Inject, Query } from '@nestjs/common';
import {
  alarmSpansQuerySchema,
  uncertaintyQuerySchema,
  type AlarmSpans,
  type PastUncertainty,
} from '@ebbline/shared/contract/trends';
import type { Failure, Result } from '@ebbline/shared/errors/result';
import { HISTORY_STORE, type HistoryStore } from '../../ports/history-store';
import { TREND_DESK, type TrendDesk } from '../../ports/trend-desk';
import { checkInput } from './check-input';
import type { ProblemCode } from './error-to-status';
import { historyProblem } from './history-problem';
import { ProblemError } from './problem-error';

/** What is drawn beside the history of points: alarms over time, and how sure past values were. */
@Controller('api')
export class TrendsController {
  constructor(
    @Inject(TREND_DESK) private readonly desk: TrendDesk,
    @Inject(HISTORY_STORE) private readonly store: Pick<HistoryStore, 'health'>,
  ) {}

  @Get('alarms/spans')
  async spans(@Query() asked: unknown): Promise<AlarmSpans> {
    const { from, to, units } = checkInput(alarmSpansQuerySchema, asked, 'QUERY_MALFORMED');
    return orProblem(await this.desk.alarmSpans({ units: idsOf(units), ...periodOf(from, to) }));
  }

  @Get('history/uncertainty')
  async uncertainty(@Query() asked: unknown): Promise<PastUncertainty> {
    const { from, moments, points, to, unit } = checkInput(uncertaintyQuerySchema, asked, 'QUERY_MALFORMED');
    const query = { unit, points: idsOf(points), moments, ...periodOf(from, to) };
    return orProblem(await this.read(query));
  }

  private async read(query: Parameters<TrendDesk['uncertainty']>[0]): ReturnType<TrendDesk['uncertainty']> {
    try {
      return await this.desk.uncertainty(query);
    } catch (cause) {
      throw historyProblem(cause, this.store.health().state === 'ok');
    }
  }
}

const idsOf = (list: string): readonly string[] => [...new Set(list.split(','))];

function periodOf(from: string, to: string): { readonly fromMs: number; readonly toMs: number } {
  const [fromMs, toMs] = [Date.parse(from), Date.parse(to)];
  if (!(toMs > fromMs))
    throw new ProblemError('QUERY_MALFORMED', 'to: must be later than from. See /api/openapi.json.');
  return { fromMs, toMs };
}

function orProblem<T>(found: Result<T, Failure<ProblemCode>>): T {
  if (!found.ok) throw new ProblemError(found.fault.code, found.fault.message);
  return found.value;
}
