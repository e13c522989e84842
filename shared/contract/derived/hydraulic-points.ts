import type { PointRow } from '../quantity-kind';

/** Flow against what drives it. */
export const hydraulicPoints: readonly PointRow[] = [
  ['expectedFlow', 'volumeFlow', 'm3/s', 'Flow that driving pressure and commissioned resistance give'],
  ['flowShare', 'ratio', '1', 'Loop flow ÷ expected flow'],
  ['loopResistance', 'ratio', '1', 'Loop resistance relative to commissioned'],
  ['filterResistance', 'ratio', '1', 'Filter resistance relative to clean'],
  ['pumpEfficiency', 'ratio', '1', 'Pump efficiency, wire to water'],
  ['pumpHydraulicPower', 'power', 'W', 'Power that the pump gives the water'],
  ['pumpHeadRatio', 'ratio', '1', 'Pump pressure rise against commissioned, at the same flow over speed'],
  ['pumpEfficiencyRatio', 'ratio', '1', 'Pump efficiency against commissioned, at the same flow over speed'],
  ['mainVelocity', 'velocity', 'm/s', 'Velocity in the mains'],
  ['mainVelocityShare', 'ratio', '1', 'Velocity in the mains ÷ permissible velocity'],
  ['mainFrictionLoss', 'pressureDifference', 'Pa', 'Friction loss of the straight mains'],
  ['branch.<id>.flowShare', 'ratio', '1', 'Branch flow ÷ expected share'],
  ['branch.<id>.resistanceRatio', 'ratio', '1', 'Branch resistance relative to commissioned'],
  ['branch.<id>.manifoldVelocity', 'velocity', 'm/s', 'Manifold velocity'],
  ['branch.<id>.manifoldVelocityShare', 'ratio', '1', 'Manifold velocity ÷ permissible velocity'],
];
