import { Body, Controller, Get, HttpCode, Inject, Post, Req } from '@nestjs/common';
import { type DemoCommand, demoCommandSchema, type DemoState } from '@ebbline/shared/contract/demo-faults';
import type { Result } from '@ebbline/shared/errors/result';
import { AUDIT, type Audit } from '../../ports/audit';
import { DEMO_PLANTS, type DemoFault, type DemoPlants } from '../../ports/demo-plants';
import { IDENTITY, type Identity } from '../../ports/identity';
import { checkInput } from './check-input';
import { ProblemError } from './problem-error';
import { record } from './record-action';
import type { WebRequest } from './web-types';
import { actorOf } from './who-asks';

/** Faults and orders of the simulated plants; a real site has none. */
@Controller('api/demo/faults')
export class DemoController {
  constructor(
    @Inject(DEMO_PLANTS) private readonly plants: DemoPlants,
    @Inject(IDENTITY) private readonly identity: Identity,
    @Inject(AUDIT) private readonly audit: Audit,
  ) {}

  @Get()
  state(): DemoState {
    return orProblem(this.plants.state());
  }

  @Post()
  @HttpCode(200)
  async command(@Body() body: unknown, @Req() request: WebRequest): Promise<DemoState> {
    const command = checkInput(demoCommandSchema, body, 'BODY_MALFORMED');
    const actor = actorOf(this.identity, request);
    record(this.audit, 'demoCommanded', actor, sayCommand(command, this.plants.state()));
    return orProblem(await this.plants.command(command));
  }
}

/** In the words of the simulator. Whatever else was sent does not stand in the journal. */
function sayCommand({ action, id, unit }: DemoCommand, state: Result<DemoState, DemoFault>): string {
  const title = state.ok ? state.value.kinds.find((kind) => kind.id === id)?.title : undefined;
  const plant =
    state.ok && state.value.units.some((one) => one.id === unit)
      ? `unit ${unit}, which is simulated`
      : 'a simulated plant';
  return `${action} ${title === undefined ? 'something of an unknown kind' : `“${title}”`} on ${plant}`;
}

function orProblem(answer: Result<DemoState, DemoFault>): DemoState {
  if (!answer.ok) throw new ProblemError(answer.fault.code, answer.fault.message);
  return answer.value;
}
