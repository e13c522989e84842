import { Body, Controller, Get, HttpCode, Inject, Param, Post } from '@nestjs/common';
import { startTrialRequestSchema, type LimitTrial } from '@ebbline/shared/contract/limit-trial';
import type { Result } from '@ebbline/shared/errors/result';
import { TRIAL_DESK, type TrialDesk, type TrialFault } from '../../ports/trial-desk';
import { checkInput } from './check-input';
import { ProblemError } from './problem-error';

/** A limit, a deadband or a delay tried over what was recorded. */
@Controller('api/limit-trials')
export class LimitTrialsController {
  constructor(@Inject(TRIAL_DESK) private readonly desk: TrialDesk) {}

  @Post()
  @HttpCode(200)
  start(@Body() body: unknown): LimitTrial {
    return orProblem(this.desk.start(checkInput(startTrialRequestSchema, body, 'BODY_MALFORMED')));
  }

  @Get(':id')
  one(@Param('id') id: string): LimitTrial {
    return orProblem(this.desk.find(id));
  }

  @Post(':id/cancel')
  @HttpCode(200)
  cancel(@Param('id') id: string): LimitTrial {
    return orProblem(this.desk.cancel(id));
  }
}

function orProblem(done: Result<LimitTrial, TrialFault>): LimitTrial {
  if (!done.ok) throw new ProblemError(done.fault.code, done.fault.message);
  return done.value;
}
