import { usable, type UnitContext } from '../judge-context';

/** Seal water so much warmer than that of the curve takes capacity that an operator notices: own rule, K. */
const warmK = 5;

/**
 * What the vacuum source itself shows where its capacity is down: warm seal water, or water in its trap. With such a sign a small
 * reserve is no leak. Null where neither shows.
 */
export function sealWaterSign({ slots, state, unit }: UnitContext): string | null {
  const signs: string[] = [];
  const looks: string[] = [];
  const temperature = usable(state, slots.vacuumSealWaterTemperature);
  const ofCurve = unit.vacuumSource?.sealWaterC ?? null;
  if (ofCurve !== null && temperature > ofCurve + warmK) {
    signs.push(
      `Seal water is at ${temperature.toFixed(0)} °C, ${(temperature - ofCurve).toFixed(0)} K above that of the curve.`,
    );
    looks.push('the seal cooler');
  }
  if (usable(state, slots.vacuumTrapFull) >= 0.5) {
    signs.push('Water stands in the trap of the vacuum source.');
    looks.push('the float of the trap');
  }
  if (signs.length === 0) return null;
  return `${signs.join(' ')} Its capacity is down, not the loop untight: start the second source and look at ${looks.join(' and ')}.`;
}
