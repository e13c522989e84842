import type { Expectation } from '../fault-expectation';

/** The bleed of the supply tank, and the change-over of alternating tanks. */
export const tankExpectations: readonly Expectation[] = [
  { fault: 'ventStuck', sizes: ['small'], first: [], because: 'a relief that opens by a fifth is asked for nothing' },
  {
    fault: 'ventStuck',
    on: ['M', 'H', 'bench'],
    sizes: ['usual'],
    first: ['VENT-1'],
    withinS: 140,
    because: 'seen once the tank wants gas',
  },
  {
    fault: 'ventStuck',
    on: ['M', 'H'],
    sizes: ['large'],
    first: ['MARGIN-2'],
    withinS: 15,
    beside: ['TANK-1'],
    because:
      'the room stands in the tank: the margin is gone within seconds; and what that presses out is more than the pump brings, so that the tank runs empty: minutes that are shown, and that it is the bleed',
  },
  {
    fault: 'ventStuck',
    on: ['bench'],
    sizes: ['large'],
    first: ['MARGIN-1'],
    withinS: 45,
    beside: ['MARGIN-2'],
    because: 'a small bleed: the lower step of the pair is told first, and folds under the upper',
  },
  {
    fault: 'ventStuck',
    on: ['tanks'],
    sizes: ['usual'],
    first: ['VENT-1'],
    withinS: 10,
    beside: ['FLOW-2'],
    because: 'a tank that lets no gas in gives no water: half a minute later the flow is gone, the next step',
  },
  {
    fault: 'ventStuck',
    on: ['tanks'],
    sizes: ['large'],
    first: ['MARGIN-2'],
    withinS: 15,
    beside: ['VENT-1'],
    because: 'the room stands in the tank that discharges; that it is the bleed is named at the next change-over',
  },
  {
    fault: 'transferLate',
    sizes: ['small', 'usual'],
    first: [],
    because: 'four to ten seconds late is less than a quarter more water than usual',
  },
  {
    fault: 'transferLate',
    sizes: ['large'],
    first: ['XFER-1'],
    withinS: 130,
    because: 'a quarter more water than usual',
  },
  {
    fault: 'transferFailed',
    sizes: ['small'],
    first: [],
    because: 'half a minute: the change-over comes in time all the same',
  },
  {
    fault: 'transferFailed',
    sizes: ['usual', 'large'],
    first: ['FLOW-2'],
    withinS: 60,
    beside: ['XFER-1'],
    because:
      'the tank runs empty within a second of when its change-over is surely late: the lost flow sends people to the change-over, which is named a second later',
  },
  {
    fault: 'transferTooOften',
    sizes: ['small'],
    first: ['XFER-1'],
    withinS: 60,
    because: 'half the usual water in a transfer',
  },
  {
    fault: 'transferTooOften',
    sizes: ['usual', 'large'],
    first: ['FLOW-2'],
    withinS: 10,
    beside: ['XFER-1'],
    because:
      'the valves flutter: flow is gone at once, and people are sent to the change-over. The gas that they let through is more than the sources carry, for half a minute; but it takes the supply tank down with it, as no opening does',
  },
];
