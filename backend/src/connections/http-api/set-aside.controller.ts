import { Body, Controller, Get, HttpCode, Inject, Param, Post, Query, Req } from '@nestjs/common';
import {
  acknowledgeManyRequestSchema,
  bringBackRequestSchema,
  findAlarmsQuerySchema,
  shelveRequestSchema,
  takeOutOfServiceRequestSchema,
  type AcknowledgeManyReply,
  type FoundAlarms,
  type SetAsideAlarm,
  type SetAsideList,
} from '@ebbline/shared/contract/alarm-modes';
import type { BroughtBack } from '@ebbline/shared/contract/brought-back';
import type { Result } from '@ebbline/shared/errors/result';
import { IDENTITY, type Identity } from '../../ports/identity';
import { LIVE_VIEW, OPERATIONS, type ActionFault, type LiveView, type Operations } from '../../ports/live-view';
import { checkInput } from './check-input';
import { ProblemError } from './problem-error';
import type { WebRequest } from './web-types';
import { actorOf } from './who-asks';

/** Alarms that are set aside, what sets them aside and brings them back, and several acknowledged at once. */
@Controller('api/alarms')
export class SetAsideController {
  constructor(
    @Inject(LIVE_VIEW) private readonly view: LiveView,
    @Inject(OPERATIONS) private readonly operations: Operations,
    @Inject(IDENTITY) private readonly identity: Identity,
  ) {}

  @Get('set-aside')
  list(): SetAsideList {
    return this.view.setAside();
  }

  @Get('findable')
  find(@Query() asked: unknown): FoundAlarms {
    return this.view.findAlarms(checkInput(findAlarmsQuerySchema, asked, 'QUERY_MALFORMED').search);
  }

  @Post('acknowledge')
  @HttpCode(200)
  acknowledge(@Body() body: unknown, @Req() request: WebRequest): AcknowledgeManyReply {
    const asked = checkInput(acknowledgeManyRequestSchema, body, 'BODY_MALFORMED');
    return this.operations.acknowledgeMany(asked, actorOf(this.identity, request, asked.operator));
  }

  @Post(':id/shelve')
  @HttpCode(200)
  shelve(@Param('id') id: string, @Body() body: unknown, @Req() request: WebRequest): SetAsideAlarm {
    const asked = checkInput(shelveRequestSchema, body, 'BODY_MALFORMED');
    return orProblem(this.operations.shelve(id, asked, actorOf(this.identity, request, asked.operator)));
  }

  @Post(':id/unshelve')
  @HttpCode(200)
  unshelve(@Param('id') id: string, @Body() body: unknown, @Req() request: WebRequest): BroughtBack {
    const asked = checkInput(bringBackRequestSchema, body, 'BODY_MALFORMED');
    return orProblem(this.operations.unshelve(id, asked, actorOf(this.identity, request, asked.operator)));
  }

  @Post(':id/take-out-of-service')
  @HttpCode(200)
  takeOut(@Param('id') id: string, @Body() body: unknown, @Req() request: WebRequest): SetAsideAlarm {
    const asked = checkInput(takeOutOfServiceRequestSchema, body, 'BODY_MALFORMED');
    return orProblem(this.operations.takeOutOfService(id, asked, actorOf(this.identity, request, asked.operator)));
  }

  @Post(':id/return-to-service')
  @HttpCode(200)
  returnToService(@Param('id') id: string, @Body() body: unknown, @Req() request: WebRequest): BroughtBack {
    const asked = checkInput(bringBackRequestSchema, body, 'BODY_MALFORMED');
    return orProblem(this.operations.returnToService(id, asked, actorOf(this.identity, request, asked.operator)));
  }
}

function orProblem<T>(done: Result<T, ActionFault>): T {
  if (done.ok) return done.value;
  const { code, message, ...members } = done.fault;
  throw new ProblemError(code, message, members);
}
