import type { Expectation } from '../fault-expectation';

/** Facility water, its valve and the exchanger. */
export const facilityExpectations: readonly Expectation[] = [
  {
    fault: 'facilityFlowLost',
    sizes: ['small'],
    first: ['TSUP-1'],
    withinS: 60,
    because:
      '40 % of the usual flow is told against the mean of ten quiet minutes, which a recording has not; the supply tells, and sends people to the facility flow',
  },
  {
    fault: 'facilityFlowLost',
    sizes: ['usual', 'large'],
    first: ['FAC-1'],
    withinS: 15,
    because:
      'the facility’s own flow tells first; heat that stays, boiling at the pump and the flow that this takes follow from it',
  },
  {
    fault: 'facilityWarm',
    sizes: ['small'],
    first: [],
    because: 'within design: the valve opens',
  },
  {
    fault: 'facilityWarm',
    on: ['M', 'H', 'bench', 'reservoir'],
    sizes: ['usual'],
    first: ['FAC-2'],
    withinS: 120,
    because: 'flows stand, the valve opens, and the supply still holds',
  },
  {
    fault: 'facilityWarm',
    on: ['tanks'],
    sizes: ['usual'],
    first: ['TSUP-1'],
    withinS: 60,
    beside: ['FAC-2'],
    because:
      'the supply runs away before the facility’s minute is over; a minute later the cause is named, and the first alarm folds under it',
  },
  {
    fault: 'facilityWarm',
    on: ['M', 'H', 'tanks', 'reservoir'],
    sizes: ['large'],
    first: ['TSUP-1'],
    withinS: 60,
    beside: ['FAC-2'],
    because: '5 K: as above, on every type',
  },
  {
    fault: 'facilityWarm',
    on: ['bench'],
    sizes: ['large'],
    first: ['FAC-2'],
    withinS: 120,
    because: 'its small plate leaves the supply 2 K of room',
  },
  {
    fault: 'valveStuck',
    sizes: ['small', 'usual'],
    first: [],
    because: 'at a steady load a valve that sticks stands where it is told to be',
  },
  {
    fault: 'valveStuck',
    on: ['M', 'H', 'tanks', 'reservoir'],
    sizes: ['large'],
    first: ['TSUP-1'],
    withinS: 45,
    beside: ['FAC-1', 'VALVE-1'],
    because:
      'its spring takes seconds to shut it: the supply tells, and sends people to flow and valve; that no facility water flows asks for a load shed; and that it is the valve of ours is named once it rests',
  },
  {
    fault: 'valveStuck',
    on: ['bench'],
    sizes: ['large'],
    first: ['FAC-1'],
    withinS: 60,
    beside: ['VALVE-1'],
    because: 'no facility water flows; that it is the valve of ours is named once it rests',
  },
  {
    fault: 'exchangerFouled',
    first: [],
    because: 'the valve opens and the supply stays; fouling is judged by day means (HX-1)',
  },
];
