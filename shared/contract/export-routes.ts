import { exportQuerySchema } from './alarm-list';
import { performanceExportQuerySchema } from './alarm-performance';
import { journalExportQuerySchema } from './journal-search';
import type { Right } from './people';
import type { z } from 'zod';

/** A route that answers a file to take along: CSV or JSON by `format`, so that no reply schema holds it. */
export interface ExportRoute {
  readonly path: `/api/${string}`;
  readonly right: Right;
  readonly query: z.ZodObject;
  readonly faults: readonly string[];
  readonly operationId: string;
  readonly summary: string;
}

export const exportRoutes = [
  {
    path: '/api/alarm-list/export',
    right: 'look',
    query: exportQuerySchema,
    faults: [],
    operationId: 'alarmListExport',
    summary: 'The list of alarms with every setting, one line for each place where an alarm is set.',
  },
  {
    path: '/api/alarms/journal/export',
    right: 'look',
    query: journalExportQuerySchema,
    faults: [],
    operationId: 'journalExport',
    summary: 'The rows of the journal that a filter lets through, oldest first, with the head of its chain.',
  },
  {
    path: '/api/alarms/performance/export',
    right: 'look',
    query: performanceExportQuerySchema,
    faults: ['HALL_UNKNOWN'],
    operationId: 'alarmPerformanceExport',
    summary: 'All figures of alarm performance as one table, or as /api/alarms/performance answers them.',
  },
] as const satisfies readonly ExportRoute[];
