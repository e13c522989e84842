import { Body, Controller, Get, HttpCode, Inject, Param, Post, Req } from '@nestjs/common';
import {
  handCorrectionRequestSchema,
  handEntryRequestSchema,
  handWithdrawalRequestSchema,
  type HandEntry,
  type HandEntryList,
} from '@ebbline/shared/contract/hand-entry';
import type { WaterQuality } from '@ebbline/shared/contract/water-quality';
import type { Result } from '@ebbline/shared/errors/result';
import { IDENTITY, type Identity } from '../../ports/identity';
import { WATER_DESK, type WaterDesk, type WaterDeskFault } from '../../ports/water-desk';
import { checkInput } from './check-input';
import { ProblemError } from './problem-error';
import type { WebRequest } from './web-types';
import { actorOf } from './who-asks';

/** Quality of a unit's water, and the values of it that people type. */
@Controller('api/units/:unit')
export class WaterController {
  constructor(
    @Inject(WATER_DESK) private readonly desk: WaterDesk,
    @Inject(IDENTITY) private readonly identity: Identity,
  ) {}

  @Get('water')
  quality(@Param('unit') unit: string): WaterQuality {
    return orProblem(this.desk.quality(unit));
  }

  @Get('hand-entries')
  entries(@Param('unit') unit: string): HandEntryList {
    return orProblem(this.desk.entries(unit));
  }

  @Post('hand-entries')
  @HttpCode(200)
  enter(@Param('unit') unit: string, @Body() body: unknown, @Req() request: WebRequest): HandEntry {
    const asked = checkInput(handEntryRequestSchema, body, 'BODY_MALFORMED');
    return orProblem(this.desk.enter(unit, asked, actorOf(this.identity, request, asked.operator)));
  }

  @Post('hand-entries/:id/correct')
  @HttpCode(200)
  correct(
    @Param('unit') unit: string,
    @Param('id') id: string,
    @Body() body: unknown,
    @Req() request: WebRequest,
  ): HandEntry {
    const asked = checkInput(handCorrectionRequestSchema, body, 'BODY_MALFORMED');
    return orProblem(this.desk.correct(unit, id, asked, actorOf(this.identity, request, asked.operator)));
  }

  @Post('hand-entries/:id/withdraw')
  @HttpCode(200)
  withdraw(
    @Param('unit') unit: string,
    @Param('id') id: string,
    @Body() body: unknown,
    @Req() request: WebRequest,
  ): HandEntry {
    const asked = checkInput(handWithdrawalRequestSchema, body, 'BODY_MALFORMED');
    return orProblem(this.desk.withdraw(unit, id, asked, actorOf(this.identity, request, asked.operator)));
  }
}

function orProblem<Value>(done: Result<Value, WaterDeskFault>): Value {
  if (!done.ok) throw new ProblemError(done.fault.code, done.fault.message);
  return done.value;
}
