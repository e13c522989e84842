import { Controller, Get, Inject, Query, Req, Res } from '@nestjs/common';
import { journalExportQuerySchema, journalQuerySchema } from '@ebbline/shared/contract/journal-search';
import type { ServerResponse } from 'node:http';
import { ALARM_JOURNAL, type AlarmJournal } from '../../ports/alarm-journal';
import type { JournalPage } from '../../ports/journal-query';
import { checkInput } from './check-input';
import { journalExport } from './journal-export';
import { journalQuery } from './journal-query';
import { ProblemError } from './problem-error';
import { sendStream } from './send-stream';
import type { WebRequest } from './web-types';
import { visitorOf } from './who-asks';

/** The journal: every change and action on record, searched and taken along. */
@Controller('api/alarms/journal')
export class JournalController {
  constructor(@Inject(ALARM_JOURNAL) private readonly journal: AlarmJournal) {}

  @Get()
  page(@Query() asked: unknown, @Req() request: WebRequest): JournalPage {
    const { order, after, before, limit, ...filter } = checkInput(journalQuerySchema, asked, 'QUERY_MALFORMED');
    if (after !== undefined && (before !== undefined || order === 'newest'))
      throw new ProblemError('QUERY_MALFORMED', 'after: goes with the oldest first. See /api/openapi.json.');
    if (before !== undefined && order === 'oldest')
      throw new ProblemError('QUERY_MALFORMED', 'before: goes with the newest first. See /api/openapi.json.');
    return this.journal.page({
      ...journalQuery(filter, mayReadAudit(request)),
      order: before === undefined ? (order ?? 'oldest') : 'newest',
      after: after ?? null,
      before: before ?? null,
      limit,
    });
  }

  /** The rows as they stand now, oldest first; rows that come meanwhile are left out. */
  @Get('export')
  async export(@Query() asked: unknown, @Req() request: WebRequest, @Res() response: ServerResponse): Promise<void> {
    const { format, ...filter } = checkInput(journalExportQuerySchema, asked, 'QUERY_MALFORMED');
    const written = journalExport(this.journal, journalQuery(filter, mayReadAudit(request)), format);
    await sendStream(response, written);
  }
}

const mayReadAudit = (request: WebRequest): boolean => visitorOf(request).rights.includes('readAudit');
