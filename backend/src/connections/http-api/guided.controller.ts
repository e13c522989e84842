import { Body, Controller, Get, HttpCode, Inject, Param, Post, Req } from '@nestjs/common';
import {
  cancelGuidedRequestSchema,
  confirmGuidedRequestSchema,
  startGuidedRequestSchema,
  type GuidedList,
  type GuidedSurvey,
  type GuidedTest,
} from '@ebbline/shared/contract/guided-test';
import type { Result } from '@ebbline/shared/errors/result';
import { GUIDED_DESK, type GuidedDesk, type GuidedDeskFault } from '../../ports/guided-desk';
import { IDENTITY, type Identity } from '../../ports/identity';
import { checkInput } from './check-input';
import { ProblemError } from './problem-error';
import type { WebRequest } from './web-types';
import { actorOf } from './who-asks';

/** Guided tests: begun, confirmed step by step and cancelled by people, measured and judged by the program. */
@Controller('api')
export class GuidedController {
  constructor(
    @Inject(GUIDED_DESK) private readonly desk: GuidedDesk,
    @Inject(IDENTITY) private readonly identity: Identity,
  ) {}

  @Get('guided-tests')
  survey(): GuidedSurvey {
    return this.desk.survey();
  }

  @Get('units/:unit/guided-tests')
  list(@Param('unit') unit: string): GuidedList {
    return orProblem(this.desk.list(unit));
  }

  @Get('units/:unit/guided-tests/:id')
  find(@Param('unit') unit: string, @Param('id') id: string): GuidedTest {
    return orProblem(this.desk.find(unit, id));
  }

  @Post('units/:unit/guided-tests')
  @HttpCode(200)
  start(@Param('unit') unit: string, @Body() body: unknown, @Req() request: WebRequest): GuidedTest {
    const asked = checkInput(startGuidedRequestSchema, body, 'BODY_MALFORMED');
    return orProblem(this.desk.start(unit, asked, actorOf(this.identity, request, asked.operator)));
  }

  @Post('units/:unit/guided-tests/:id/confirm')
  @HttpCode(200)
  confirm(
    @Param('unit') unit: string,
    @Param('id') id: string,
    @Body() body: unknown,
    @Req() request: WebRequest,
  ): GuidedTest {
    const asked = checkInput(confirmGuidedRequestSchema, body, 'BODY_MALFORMED');
    return orProblem(this.desk.confirm(unit, id, asked, actorOf(this.identity, request, asked.operator)));
  }

  @Post('units/:unit/guided-tests/:id/cancel')
  @HttpCode(200)
  cancel(
    @Param('unit') unit: string,
    @Param('id') id: string,
    @Body() body: unknown,
    @Req() request: WebRequest,
  ): GuidedTest {
    const asked = checkInput(cancelGuidedRequestSchema, body, 'BODY_MALFORMED');
    return orProblem(this.desk.cancel(unit, id, asked, actorOf(this.identity, request, asked.operator)));
  }
}

function orProblem<Value>(done: Result<Value, GuidedDeskFault>): Value {
  if (!done.ok) throw new ProblemError(done.fault.code, done.fault.message);
  return done.value;
}
