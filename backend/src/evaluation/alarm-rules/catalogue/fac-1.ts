import type { UnitEntry } from '../entry';
import { stoppedModes } from '../modes-of-rules';
import { judgeFacilityFlow } from '../plant-signs/facility-flow-sign';
import { judgeByTemperatures } from '../plant-signs/facility-lost-by-temperature';
import { rideThroughText } from '../plant-signs/ride-through-text';

/** Facility water has stopped: `limit` and `deadband` are shares of what flowed before. Without a meter, by temperatures. */
export const fac1: UnitEntry = {
  id: 'FAC-1',
  title: 'Facility water flow lost',
  cause:
    'Chiller or facility pump tripped, a valve of the facility shut, a strainer blocked, or the control valve shut.',
  consequence:
    'The supply warms by kelvins within half a minute; the pump inlet nears cavitation, then chips throttle.',
  action: {
    a: 'Call the plant room and shed load at once; do not wait for the temperature. Keep the loop flowing: the stored water is the time there is.',
    b: 'Call the plant room and shed load at once; do not wait for the temperature. Keep the tanks changing over: the stored water is the time there is.',
    c: 'Call the plant room and shed load at once; do not wait for the temperature. Keep the circulation pump running: the stored water is the time there is.',
  },
  confirm: 'Ask the plant room; compare the facility return temperature with the loop’s: without flow they meet.',
  timeToRespondS: 60,
  severity: 'severe',
  worse: null,
  latching: false,
  defaults: { limit: 0.5, deadband: 0.2, onDelayMs: 2000, offDelayMs: 10_000 },
  unitOfMeasure: 'm3/s',
  basis:
    'Energy balance: 208 kW into the water between exchanger and racks is 4 K in 20 s. Two seconds of delay and a meter’s lag of two leave it seen within five.',
  feeds: ['facility.flow', 'facility.return.temperature'],
  offInModes: stoppedModes,
  offWhenInferred: true,
  applies: (_unit, slots) => slots.facilityFlow >= 0 || slots.facilityReturnTemperature >= 0,
  judge(context, limits, active, finding) {
    if (context.slots.facilityFlow >= 0) judgeFacilityFlow(context, limits, active, finding);
    else judgeByTemperatures(context, active, finding);
  },
  detail: (context) => rideThroughText(context),
};
