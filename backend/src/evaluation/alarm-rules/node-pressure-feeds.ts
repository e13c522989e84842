/**
 * What the pressures of the wetted nodes rest on: one sensor of each main, the temperatures (density of the columns) and
 * the flow (losses). Where one of them is bad no margin is known.
 */
export const nodePressureFeeds: readonly string[] = [
  'supplyTank.pressure',
  'supply.pressure',
  'separator.pressure',
  'return.pressure',
  'supply.temperature',
  'return.temperature',
  'loop.flow',
];
