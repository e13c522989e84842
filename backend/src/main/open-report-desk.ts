import type { ValueProvider } from '@nestjs/common';
import { REPORT_DESK } from '../ports/report-desk';
import { RunnerReportDesk, type ReportDeskParts } from '../runner/report/report-desk';

/** The report of a shift, for the route. */
export const openReportDesk = (parts: ReportDeskParts): ValueProvider => ({
  provide: REPORT_DESK,
  useValue: new RunnerReportDesk(parts),
});
