import { Body, Controller, Get, HttpCode, Inject, Param, Post, Req } from '@nestjs/common';
import {
  endTightnessRequestSchema,
  startTightnessRequestSchema,
  type TightnessList,
  type TightnessTest,
} from '@ebbline/shared/contract/tightness-test';
import type { Result } from '@ebbline/shared/errors/result';
import { IDENTITY, type Identity } from '../../ports/identity';
import { TIGHTNESS_DESK, type TightnessDesk, type TightnessDeskFault } from '../../ports/tightness-desk';
import { checkInput } from './check-input';
import { ProblemError } from './problem-error';
import type { WebRequest } from './web-types';
import { actorOf } from './who-asks';

/** Guided pressure-rise tests of a unit: started and ended by a person, measured by the program. */
@Controller('api/units/:unit/tightness-tests')
export class TightnessController {
  constructor(
    @Inject(TIGHTNESS_DESK) private readonly desk: TightnessDesk,
    @Inject(IDENTITY) private readonly identity: Identity,
  ) {}

  @Get()
  list(@Param('unit') unit: string): TightnessList {
    return orProblem(this.desk.list(unit));
  }

  @Get(':id')
  find(@Param('unit') unit: string, @Param('id') id: string): TightnessTest {
    return orProblem(this.desk.find(unit, id));
  }

  @Post()
  @HttpCode(200)
  start(@Param('unit') unit: string, @Body() body: unknown, @Req() request: WebRequest): TightnessTest {
    const asked = checkInput(startTightnessRequestSchema, body, 'BODY_MALFORMED');
    return orProblem(this.desk.start(unit, asked, actorOf(this.identity, request, asked.operator)));
  }

  @Post(':id/end')
  @HttpCode(200)
  end(
    @Param('unit') unit: string,
    @Param('id') id: string,
    @Body() body: unknown,
    @Req() request: WebRequest,
  ): TightnessTest {
    const asked = checkInput(endTightnessRequestSchema, body, 'BODY_MALFORMED');
    return orProblem(this.desk.end(unit, id, asked, actorOf(this.identity, request, asked.operator)));
  }
}

function orProblem<Value>(done: Result<Value, TightnessDeskFault>): Value {
  if (!done.ok) throw new ProblemError(done.fault.code, done.fault.message);
  return done.value;
}
