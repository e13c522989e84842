import { Body, Controller, Get, HttpCode, Inject, Param, Post, Req } from '@nestjs/common';
import { acknowledgeRequestSchema, type Alarm } from '@ebbline/shared/contract/alarm';
import { IDENTITY, type Identity } from '../../ports/identity';
import { LIVE_VIEW, OPERATIONS, type ActionFault, type LiveView, type Operations } from '../../ports/live-view';
import { checkInput } from './check-input';
import { ProblemError } from './problem-error';
import type { WebRequest } from './web-types';
import { actorOf } from './who-asks';

/** Standing alarms, and what a person does about them. */
@Controller('api/alarms')
export class AlarmsController {
  constructor(
    @Inject(LIVE_VIEW) private readonly view: LiveView,
    @Inject(OPERATIONS) private readonly operations: Operations,
    @Inject(IDENTITY) private readonly identity: Identity,
  ) {}

  @Get()
  list(): ReturnType<LiveView['alarms']> {
    return this.view.alarms();
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
