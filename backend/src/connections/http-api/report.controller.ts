import { Controller, Get, Inject, Query, Req } from '@nestjs/common';
import { reportQuerySchema, type Report } from '@ebbline/shared/contract/report';
import { HISTORY_STORE, type HistoryStore } from '../../ports/history-store';
import { REPORT_DESK, type ReportDesk, type ReportQuery } from '../../ports/report-desk';
import { checkInput } from './check-input';
import { historyProblem } from './history-problem';
import { ProblemError } from './problem-error';
import type { WebRequest } from './web-types';
import { visitorOf } from './who-asks';

/** What one shift hands to the next, and the figures of its period. */
@Controller('api')
export class ReportController {
  constructor(
    @Inject(REPORT_DESK) private readonly desk: ReportDesk,
    @Inject(HISTORY_STORE) private readonly store: HistoryStore,
  ) {}

  @Get('report')
  async report(@Query() query: unknown, @Req() request: WebRequest): Promise<Report> {
    const { hall = null, from, to } = checkInput(reportQuerySchema, query, 'QUERY_MALFORMED');
    const { caller, rights } = visitorOf(request);
    const done = await this.read({
      ...{ hall, fromMs: Date.parse(from), toMs: Date.parse(to) },
      madeBy: caller?.name ?? null,
      mayReadAudit: rights.includes('readAudit'),
    });
    if (!done.ok) throw new ProblemError(done.fault.code, done.fault.message);
    return done.value;
  }

  private async read(query: ReportQuery): ReturnType<ReportDesk['report']> {
    try {
      return await this.desk.report(query);
    } catch (cause) {
      throw historyProblem(cause, this.store.health().state === 'ok');
    }
  }
}
