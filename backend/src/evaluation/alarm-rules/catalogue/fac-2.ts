import { judgeAbove } from '../above';
import type { UnitEntry } from '../entry';
import { usable } from '../judge-context';
import { stoppedModes } from '../modes-of-rules';

/** Facility water warmer than its design figure, by more than `limit`, K. */
export const fac2: UnitEntry = {
  id: 'FAC-2',
  title: 'Facility water too warm',
  cause: 'Chiller or cooling tower short of capacity, a hot day, or facility flow mixed back.',
  consequence: 'The supply set point cannot be held at full load; chips lose their margin.',
  action: {
    a: 'Call the plant room. Until it is cooler, move load away or let the supply set point rise within the racks’ class.',
    b: 'Call the plant room. Until it is cooler, move load away or let the supply set point rise within the racks’ class.',
    c: 'Call the plant room. Until it is cooler, move load away or let the supply set point rise within the racks’ class.',
  },
  confirm:
    'Compare with the facility supply temperature of the neighbouring units, and the valve position with its usual.',
  timeToRespondS: 10 * 60,
  severity: 'severe',
  worse: null,
  latching: false,
  defaults: { limit: 0, deadband: 0.5, onDelayMs: 60_000, offDelayMs: 60_000 },
  unitOfMeasure: 'Cel',
  basis: 'Design figure of the exchanger in the site file. Proposal of this project.',
  feeds: ['facility.supply.temperature'],
  offInModes: stoppedModes,
  offWhenInferred: true,
  applies: (unit, slots) => unit.design.facilityDesignSupplyC !== null && slots.facilitySupplyTemperature >= 0,
  judge(context, limits, active, finding) {
    finding.value = usable(context.state, context.slots.facilitySupplyTemperature);
    finding.limit = (context.unit.design.facilityDesignSupplyC ?? Number.NaN) + limits.limit;
    finding.verdict = judgeAbove(finding.value, finding.limit, limits.deadband, active);
  },
};
