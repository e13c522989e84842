import { judgeAbove } from '../above';
import { anyOf } from '../any-of';
import { judgeBelow } from '../below';
import type { UnitEntry } from '../entry';
import { holdWhileBad } from '../hold-while-bad';
import { usable, type UnitContext } from '../judge-context';
import { stoppedModes } from '../modes-of-rules';
import { Verdict } from '../verdict';

/** The valve of a fouled exchanger stands open at usual load: share of the stroke. */
export const openValve = 0.95;
const openValveEnd = 0.9;
/** Usual load, as shares of rated heat. */
const usualLoad = { from: 0.5, to: 1.05 } as const;

/**
 * Exchanger fouled: UA at equal flows below `limit` of clean, mean of a day; or the facility valve open at usual load while the
 * facility water is no warmer than its design. The approach can't show it while the supply temperature is controlled.
 */
export const hx1: UnitEntry = {
  id: 'HX-1',
  title: 'Heat exchanger is fouling',
  cause: 'Scale, slime or particles on the facility side, or on the loop side after works.',
  consequence: 'Capacity is missing on the next hot day; nothing shows before while the valve can still open.',
  action: {
    a: 'Plan the cleaning of the exchanger before the warm season; take the unit out of duty for it.',
    b: 'Plan the cleaning of the exchanger before the warm season; take the unit out of duty for it.',
    c: 'Plan the cleaning of the exchanger before the warm season; take the unit out of duty for it.',
  },
  confirm: 'Compare UA with that of a neighbouring unit at the same flows, and the pressure drop of the facility side.',
  timeToRespondS: 3 * 86_400,
  severity: 'minor',
  worse: null,
  latching: false,
  defaults: { limit: 0.75, deadband: 0.03, onDelayMs: 0, offDelayMs: 0 },
  unitOfMeasure: '1',
  basis:
    'Effectiveness–NTU at the flows of commissioning, film coefficients with the power 0.7 to 0.8 of flow (common practice).',
  feeds: ['facility.flow', 'facility.supply.temperature', 'facility.return.temperature', 'valve.command'],
  offInModes: stoppedModes,
  offWhenInferred: true,
  applies: (_unit, slots) => slots.uaRatio >= 0 || slots.valveCommand >= 0,
  judge(context, limits, active, finding) {
    const { plant, slots, state, unitIndex } = context;
    plant.uaRatio.push(unitIndex, usable(state, slots.uaRatio), context.nowMs);
    plant.valveAtLoad.push(unitIndex, valveAtUsualLoad(context), context.nowMs);
    const ratio = plant.uaRatio.mean(unitIndex);
    const valve = plant.valveAtLoad.mean(unitIndex);
    finding.value = ratio;
    finding.limit = limits.limit;
    const below = judgeBelow(ratio, limits.limit, limits.deadband, active);
    const above = judgeAbove(valve, openValve, openValve - openValveEnd, active);
    const fouled = slots.uaRatio < 0 ? Verdict.no : holdWhileBad(state, slots.uaRatio, below);
    const openKnown = holdWhileBad(state, slots.heatRemoved, holdWhileBad(state, slots.valveCommand, above));
    const open = slots.valveCommand < 0 ? Verdict.no : openKnown;
    finding.verdict = anyOf(fouled, open);
    if (open !== Verdict.yes || fouled === Verdict.yes) return;
    finding.value = valve;
    finding.limit = openValve;
  },
  detail({ plant, unitIndex }) {
    const ratio = plant.uaRatio.mean(unitIndex);
    const valve = plant.valveAtLoad.mean(unitIndex);
    const parts = [
      ...(Number.isNaN(ratio) ? [] : [`UA ${(100 * ratio).toFixed(0)} % of clean at the same flows`]),
      ...(Number.isNaN(valve) ? [] : [`valve ${(100 * valve).toFixed(0)} % open at usual load`]),
    ];
    return parts.length === 0 ? null : `Mean of a day: ${parts.join(', ')}.`;
  },
};

/** NaN at other loads, and while warm facility water explains an open valve. */
function valveAtUsualLoad({ slots, state, unit }: UnitContext): number {
  const rated = unit.design.ratedHeatW ?? Number.NaN;
  const heat = usable(state, slots.heatRemoved);
  if (!(heat >= usualLoad.from * rated && heat <= usualLoad.to * rated)) return Number.NaN;
  const design = unit.design.facilityDesignSupplyC;
  const facility = usable(state, slots.facilitySupplyTemperature);
  if (design !== null && facility > design) return Number.NaN;
  return usable(state, slots.valveCommand);
}
