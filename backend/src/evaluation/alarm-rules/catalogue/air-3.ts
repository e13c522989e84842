import { anyOf } from '../any-of';
import { judgeBelow } from '../below';
import { freeAirText, joined } from '../details/quantity-text';
import { judgeDiscrete } from '../discrete';
import type { UnitEntry } from '../entry';
import { usable } from '../judge-context';
import { sealWaterSign } from '../plant-signs/seal-water-sign';
import { Verdict } from '../verdict';

/**
 * What one vacuum source has left is less than one open hose of this site takes. `limit`: hoses. A source with water in its trap
 * moves less than its curve says, by an amount that nobody has measured: it is counted as one that carries no hose (own rule).
 */
export const air3: UnitEntry = {
  id: 'AIR-3',
  title: 'Vacuum reserve below one open hose',
  cause: 'In-leak, warm or too little seal water, water in the trap, or a worn or failed vacuum source.',
  consequence: 'The next line that comes open is not carried: all flow would be lost with it.',
  action: {
    a: 'Start or restore the second vacuum source; check seal water flow and temperature, and the trap.',
    b: 'Start or restore the second vacuum source; check seal water flow and temperature, and the trap; see that the tanks fill in their usual time.',
    c: 'Start or restore the second vacuum source of the reservoir; check seal water flow and temperature, and the trap.',
  },
  confirm:
    'Compare gas load and capacity: where the load is as usual, the source has become weak and there is no leak to look for.',
  timeToRespondS: 15 * 60,
  severity: 'major',
  worse: null,
  latching: false,
  defaults: { limit: 1, deadband: 0.1, onDelayMs: 60_000, offDelayMs: 60_000 },
  unitOfMeasure: '1',
  basis: 'Choked flow through one hose of this site against the source’s own curve at its seal temperature.',
  feeds: [
    'separator.pressure',
    'return.temperature',
    'vacuum.exhaustFlow',
    'vacuum.speed',
    'vacuum.running',
    'vacuum.trap.full',
  ],
  offInModes: [],
  offWhenInferred: false,
  applies: (_unit, slots) => slots.openingsCarried >= 0,
  judge(context, limits, active, finding) {
    const { slots, state } = context;
    const byCurve = usable(state, slots.openingsCarried);
    const trap = slots.vacuumTrapFull < 0 ? Verdict.no : judgeDiscrete(usable(state, slots.vacuumTrapFull));
    finding.value = trap === Verdict.yes ? 0 : byCurve;
    finding.limit = limits.limit;
    finding.verdict = anyOf(trap, judgeBelow(byCurve, limits.limit, limits.deadband, active));
  },
  detail(context) {
    const { slots, state } = context;
    const reserve = usable(state, slots.vacuumReserve);
    const load = usable(state, slots.gasLoad);
    const all = usable(state, slots.openingsCarriedAll);
    const trapFull = usable(state, slots.vacuumTrapFull) >= 0.5;
    const coming = Number.isNaN(load) ? '' : `; ${freeAirText(load)} come in`;
    return joined(
      Number.isNaN(reserve)
        ? null
        : `One source has ${freeAirText(Math.max(0, reserve))} left${trapFull ? ' by its curve' : ''}${coming}.`,
      trapFull ? 'With water in its trap it carries less: counted as no open hose.' : null,
      Number.isNaN(all) || trapFull ? null : `With all sources ${hosesText(Math.max(0, Math.floor(all)))} carried.`,
      sealWaterSign(context),
    );
  },
};

const hosesText = (count: number): string => (count === 1 ? '1 open hose is' : `${count} open hoses are`);
