import { Body, Controller, Get, HttpCode, Inject, Post, Req } from '@nestjs/common';
import { demoCommandSchema, type DemoState } from '@ebbline/shared/contract/demo-faults';
import type { Result } from '@ebbline/shared/errors/result';
import { DEMO_PLANTS, type DemoFault, type DemoPlants } from '../../ports/demo-plants';
import { IDENTITY, type Identity } from '../../ports/identity';
import { checkInput } from './check-input';
import { ProblemError } from './problem-error';
import type { WebRequest } from './web-types';

/** Faults and orders of the simulated plants; a real site has none. */
@Controller('api/demo/faults')
export class DemoController {
  constructor(
    @Inject(DEMO_PLANTS) private readonly plants: DemoPlants,
    @Inject(IDENTITY) private readonly identity: Identity,
  ) {}

  @Get()
  state(): DemoState {
    return orProblem(this.plants.state());
  }

  @Post()
  @HttpCode(200)
  async command(@Body() body: unknown, @Req() request: WebRequest): Promise<DemoState> {
    const command = checkInput(demoCommandSchema, body, 'BODY_MALFORMED');
    const remoteAddress = request.socket.remoteAddress ?? '';
    const actor = this.identity.actorOf({ operator: 'demo', remoteAddress });
    if (!actor.ok) throw new ProblemError(actor.fault.code, actor.fault.message);
    return orProblem(await this.plants.command(command));
  }
}

function orProblem(answer: Result<DemoState, DemoFault>): DemoState {
  if (!answer.ok) throw new ProblemError(answer.fault.code, answer.fault.message);
  return answer.value;
}
