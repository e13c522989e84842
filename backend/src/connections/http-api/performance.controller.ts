import { Controller, Get, Inject, Query, Res } from '@nestjs/common';
import {
  performanceExportQuerySchema,
  performanceQuerySchema,
  type AlarmPerformance,
} from '@ebbline/shared/contract/alarm-performance';
import { PERFORMANCE_DESK, type PerformanceDesk } from '../../ports/performance-desk';
import { checkInput } from './check-input';
import { csvContentType } from './csv/to-csv';
import { performanceTable } from './performance-table';
import { ProblemError } from './problem-error';
import type { WebResponse } from './web-types';

interface Asked {
  readonly from?: string | undefined;
  readonly to?: string | undefined;
  readonly hall?: string | undefined;
}

/** How well the alarms served the operator. */
@Controller('api/alarms/performance')
export class PerformanceController {
  constructor(@Inject(PERFORMANCE_DESK) private readonly desk: PerformanceDesk) {}

  @Get()
  async report(@Query() asked: unknown): Promise<AlarmPerformance> {
    return this.read(checkInput(performanceQuerySchema, asked, 'QUERY_MALFORMED'));
  }

  /** The same to take along. */
  @Get('export')
  async export(@Query() asked: unknown, @Res() response: WebResponse): Promise<void> {
    const { format, ...query } = checkInput(performanceExportQuerySchema, asked, 'QUERY_MALFORMED');
    const report = await this.read(query);
    response.set('Content-Disposition', `attachment; filename="alarm-performance-${report.to.slice(0, 10)}.${format}"`);
    if (format === 'csv') response.type(csvContentType).send(performanceTable(report));
    else response.type('application/json').send(`${JSON.stringify(report, null, 2)}\n`);
  }

  private async read({ from, to, hall }: Asked): Promise<AlarmPerformance> {
    const done = await this.desk.report({ fromMs: timeOf(from), toMs: timeOf(to), hall: hall ?? null });
    if (!done.ok) throw new ProblemError(done.fault.code, done.fault.message);
    return done.value;
  }
}

const timeOf = (iso: string | undefined): number | null => (iso === undefined ? null : Date.parse(iso));
