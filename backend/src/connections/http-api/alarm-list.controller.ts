import { Body, Controller, Get, HttpCode, Inject, Param, Post, Query, Req, Res } from '@nestjs/common';
import {
  alarmListingQuerySchema,
  changeSettingsRequestSchema,
  decideProposalRequestSchema,
  exportQuerySchema,
  type AlarmListing,
  type SettingChange,
  type SettingChanges,
  type SettingsAudit,
} from '@ebbline/shared/contract/alarm-list';
import { ALARM_LIST, type AlarmListDesk } from '../../ports/alarm-list';
import { IDENTITY, type Identity } from '../../ports/identity';
import { alarmListTable } from './alarm-list-table';
import { checkInput } from './check-input';
import { csvContentType } from './csv/to-csv';
import { ProblemError } from './problem-error';
import type { WebRequest, WebResponse } from './web-types';
import { actorOf } from './who-asks';

/** The rationalized list of alarms: read, compared with what was authorised, taken along, and changed. */
@Controller('api/alarm-list')
export class AlarmListController {
  constructor(
    @Inject(ALARM_LIST) private readonly desk: AlarmListDesk,
    @Inject(IDENTITY) private readonly identity: Identity,
  ) {}

  @Get()
  list(@Query() asked: unknown): AlarmListing {
    const { search, differing } = checkInput(alarmListingQuerySchema, asked, 'QUERY_MALFORMED');
    return this.desk.list({ search, differing: differing === 'true' });
  }

  @Get('changes')
  changes(): SettingChanges {
    return this.desk.changes();
  }

  @Get('audit')
  audit(): SettingsAudit {
    return this.desk.audit();
  }

  @Get('export')
  export(@Query() asked: unknown, @Res() response: WebResponse): void {
    const { format } = checkInput(exportQuerySchema, asked, 'QUERY_MALFORMED');
    const listing = this.desk.list({});
    response.set('Content-Disposition', `attachment; filename="alarm-list-${listing.time.slice(0, 10)}.${format}"`);
    if (format === 'csv') response.type(csvContentType).send(alarmListTable(listing));
    else response.type('application/json').send(`${JSON.stringify(listing, null, 2)}\n`);
  }

  @Post('changes')
  @HttpCode(200)
  change(@Body() body: unknown, @Req() request: WebRequest): SettingChange {
    const asked = checkInput(changeSettingsRequestSchema, body, 'BODY_MALFORMED');
    const done = this.desk.change(asked, actorOf(this.identity, request, asked.operator));
    if (!done.ok) throw new ProblemError(done.fault.code, done.fault.message, done.fault.members);
    return done.value;
  }

  @Post('proposals/:id')
  @HttpCode(200)
  decide(@Param('id') id: string, @Body() body: unknown, @Req() request: WebRequest): SettingChange {
    const { decision, operator } = checkInput(decideProposalRequestSchema, body, 'BODY_MALFORMED');
    const done = this.desk.decide(id, decision, actorOf(this.identity, request, operator));
    if (!done.ok) throw new ProblemError(done.fault.code, done.fault.message, done.fault.members);
    return done.value;
  }
}
