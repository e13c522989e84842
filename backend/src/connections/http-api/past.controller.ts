import { Controller, Get, Inject, Param, Query } from '@nestjs/common';
import type { HallTrails } from '@ebbline/shared/contract/hall-trails';
import {
  longestMarksSeconds,
  pastMarksQuerySchema,
  pastQuerySchema,
  type PastHall,
  type PastMarks,
  type PastUnit,
} from '@ebbline/shared/contract/past';
import type { Result } from '@ebbline/shared/errors/result';
import { HISTORY_STORE, type HistoryStore } from '../../ports/history-store';
import { PAST_DESK, type PastDesk, type PastFault } from '../../ports/past-desk';
import { checkInput } from './check-input';
import { historyProblem } from './history-problem';
import { ProblemError } from './problem-error';

/** Past seconds as they stood, and what happened in a period. */
@Controller('api/past')
export class PastController {
  constructor(
    @Inject(PAST_DESK) private readonly desk: PastDesk,
    @Inject(HISTORY_STORE) private readonly store: HistoryStore,
  ) {}

  @Get('halls/:hall')
  hall(@Param('hall') hall: string, @Query() asked: unknown): Promise<PastHall> {
    const { at } = checkInput(pastQuerySchema, asked, 'QUERY_MALFORMED');
    return this.orProblem(() => this.desk.hall(hall, Date.parse(at)));
  }

  @Get('halls/:hall/trails')
  trails(@Param('hall') hall: string, @Query() asked: unknown): Promise<HallTrails> {
    const { at } = checkInput(pastQuerySchema, asked, 'QUERY_MALFORMED');
    return this.orProblem(() => this.desk.trails(hall, Date.parse(at)));
  }

  @Get('units/:unit')
  unit(@Param('unit') unit: string, @Query() asked: unknown): Promise<PastUnit> {
    const { at } = checkInput(pastQuerySchema, asked, 'QUERY_MALFORMED');
    return this.orProblem(() => this.desk.unit(unit, Date.parse(at)));
  }

  @Get('marks')
  marks(@Query() asked: unknown): Promise<PastMarks> {
    const { hall = null, unit = null, from, to } = checkInput(pastMarksQuerySchema, asked, 'QUERY_MALFORMED');
    if (hall !== null && unit !== null)
      throw new ProblemError('QUERY_MALFORMED', 'unit, hall: give one of the two, or none. See /api/openapi.json.');
    const [fromMs, toMs] = [Date.parse(from), Date.parse(to)];
    if (!(toMs > fromMs) || toMs - fromMs > longestMarksSeconds * 1000)
      throw new ProblemError(
        'QUERY_MALFORMED',
        'to: must be later than from, by a day at most. See /api/openapi.json.',
      );
    return this.orProblem(() => this.desk.marks({ hall, unit, fromMs, toMs }));
  }

  private async orProblem<Value>(ask: () => Promise<Result<Value, PastFault>>): Promise<Value> {
    let done: Result<Value, PastFault>;
    try {
      done = await ask();
    } catch (cause) {
      throw historyProblem(cause, this.store.health().state === 'ok');
    }
    if (!done.ok) throw new ProblemError(done.fault.code, done.fault.message);
    return done.value;
  }
}
