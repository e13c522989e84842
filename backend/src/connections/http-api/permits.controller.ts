import { Body, Controller, Get, HttpCode, Inject, Param, Post, Req } from '@nestjs/common';
import {
  closePermitRequestSchema,
  openPermitRequestSchema,
  type Permit,
  type PermitList,
} from '@ebbline/shared/contract/permit';
import type { Result } from '@ebbline/shared/errors/result';
import { IDENTITY, type Identity } from '../../ports/identity';
import { LIVE_VIEW, OPERATIONS, type LiveView, type Operations, type PermitActionFault } from '../../ports/live-view';
import { checkInput } from './check-input';
import { ProblemError } from './problem-error';
import type { WebRequest } from './web-types';
import { actorOf } from './who-asks';

/** Planned openings of a branch: who, until when, how much air is expected. */
@Controller('api/permits')
export class PermitsController {
  constructor(
    @Inject(LIVE_VIEW) private readonly view: LiveView,
    @Inject(OPERATIONS) private readonly operations: Operations,
    @Inject(IDENTITY) private readonly identity: Identity,
  ) {}

  @Get()
  list(): PermitList {
    return this.view.permits();
  }

  @Post()
  @HttpCode(200)
  open(@Body() body: unknown, @Req() request: WebRequest): Permit {
    const asked = checkInput(openPermitRequestSchema, body, 'BODY_MALFORMED');
    return orProblem(this.operations.openPermit(asked, actorOf(this.identity, request, asked.operator)));
  }

  @Post(':id/close')
  @HttpCode(200)
  close(@Param('id') id: string, @Body() body: unknown, @Req() request: WebRequest): Permit {
    const asked = checkInput(closePermitRequestSchema, body, 'BODY_MALFORMED');
    return orProblem(this.operations.closePermit(id, asked, actorOf(this.identity, request, asked.operator)));
  }
}

function orProblem(done: Result<Permit, PermitActionFault>): Permit {
  if (!done.ok) throw new ProblemError(done.fault.code, done.fault.message);
  return done.value;
}
