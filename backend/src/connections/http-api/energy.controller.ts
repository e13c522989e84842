import { Controller, Get, Inject, Query } from '@nestjs/common';
import { energyQuerySchema, type EnergyReport } from '@ebbline/shared/contract/energy';
import { ENERGY_TOTALS, type EnergyTotals } from '../../ports/energy-totals';
import { HISTORY_STORE, type HistoryStore } from '../../ports/history-store';
import { checkInput } from './check-input';
import { historyProblem } from './history-problem';
import { ProblemError } from './problem-error';

/** Heat and electrical energy by the site's calendar. */
@Controller('api')
export class EnergyController {
  constructor(
    @Inject(ENERGY_TOTALS) private readonly totals: EnergyTotals,
    @Inject(HISTORY_STORE) private readonly store: HistoryStore,
  ) {}

  @Get('energy')
  async energy(@Query() asked: unknown): Promise<EnergyReport> {
    const { unit = null, hall = null, from, to, by } = checkInput(energyQuerySchema, asked, 'QUERY_MALFORMED');
    if (unit !== null && hall !== null)
      throw new ProblemError('QUERY_MALFORMED', 'unit, hall: give one of the two, or none. See /api/openapi.json.');
    const [fromMs, toMs] = [Date.parse(from), Date.parse(to)];
    if (!(toMs > fromMs))
      throw new ProblemError('QUERY_MALFORMED', 'to: must be later than from. See /api/openapi.json.');
    const report = await this.read({ unit, hall, fromMs, toMs, by });
    if (!report.ok) throw new ProblemError(report.fault.code, report.fault.message);
    return report.value;
  }

  private async read(request: Parameters<EnergyTotals['report']>[0]): ReturnType<EnergyTotals['report']> {
    try {
      return await this.totals.report(request);
    } catch (cause) {
      throw historyProblem(cause, this.store.health().state === 'ok');
    }
  }
}
