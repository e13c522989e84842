import { Body, Controller, Get, HttpCode, Inject, Param, Post, Query, Req } from '@nestjs/common';
import { acknowledgeRequestSchema, type Alarm } from '@ebbline/shared/contract/alarm';
import { journalQuerySchema } from '@ebbline/shared/contract/http-api';
import { ALARM_JOURNAL, type AlarmJournal } from '../../ports/alarm-journal';
import { IDENTITY, type Identity } from '../../ports/identity';
import { LIVE_VIEW, OPERATIONS, type ActionFault, type LiveView, type Operations } from '../../ports/live-view';
import { checkInput } from './check-input';
import { ProblemError } from './problem-error';
import type { WebRequest } from './web-types';
import { actorOf, visitorOf } from './who-asks';

/** Standing alarms, their journal, and what a person does about them. */
@Controller('api/alarms')
export class AlarmsController {
  constructor(
    @Inject(LIVE_VIEW) private readonly view: LiveView,
    @Inject(OPERATIONS) private readonly operations: Operations,
    @Inject(ALARM_JOURNAL) private readonly journal: AlarmJournal,
    @Inject(IDENTITY) private readonly identity: Identity,
  ) {}

  @Get()
  list(): ReturnType<LiveView['alarms']> {
    return this.view.alarms();
  }

  @Get('journal')
  page(@Query() asked: unknown, @Req() request: WebRequest): ReturnType<AlarmJournal['page']> {
    const { from, to, after } = checkInput(journalQuerySchema, asked, 'QUERY_MALFORMED');
    const [fromMs, toMs] = [timeOf(from), timeOf(to)];
    if (fromMs !== null && toMs !== null && !(toMs > fromMs))
      throw new ProblemError('QUERY_MALFORMED', 'to: must be later than from. See /api/openapi.json.');
    const audit = visitorOf(request).rights.includes('readAudit');
    return this.journal.page({ fromMs, toMs, after: after ?? null, audit });
  }

  @Post(':id/acknowledge')
  @HttpCode(200)
  acknowledge(@Param('id') id: string, @Body() body: unknown, @Req() request: WebRequest): Alarm {
    const asked = checkInput(acknowledgeRequestSchema, body, 'BODY_MALFORMED');
    const done = this.operations.acknowledge(id, asked, actorOf(this.identity, request, asked.operator));
    if (!done.ok) throw refusal(done.fault);
    return done.value;
  }
}

function refusal({ code, message, ...members }: ActionFault): ProblemError {
  return new ProblemError(code, message, members);
}

const timeOf = (iso: string | undefined): number | null => (iso === undefined ? null : Date.parse(iso));
