import { dayStartMs } from '@ebbline/shared/clock/days-from-civil';
import type { MergedUnit } from './merge-templates';
import type { UnitDesign, WettedNode } from './compiled-unit';
import type { FaultList } from './site-fault';

type Row = readonly [value: number | null, minimum: number, maximum: number, keys: readonly string[]];

/** Whether a commissioning record says who and when, is possible, and agrees with the rest of the unit. */
export function checkCommissioning(
  { unit, at }: MergedUnit,
  design: UnitDesign,
  nodes: readonly WettedNode[],
  faults: FaultList,
): void {
  if (unit.commissioning === undefined) return;
  const fault = (keys: readonly string[], message: string): void => faults.add(at('commissioning', ...keys), message);
  const { commissioned: found } = design;
  if (found.by === null) fault(['by'], 'is missing; say who took these figures, as a role or a name');
  if (found.on === null) fault(['on'], 'is missing; say on which day they were taken, such as 2026-03-14');
  else if (Number.isNaN(dayStartMs(found.on)))
    fault(['on'], 'expected a day of the calendar as year-month-day, such as 2026-03-14');

  const above = Number.MIN_VALUE;
  const rows: readonly Row[] = [
    [found.loopLossPa, above, Infinity, ['loop', 'loss']],
    [found.loopExponent, 1, 2.2, ['loop', 'exponent']],
    [found.filterLossPa, above, Infinity, ['filter', 'loss']],
    [found.filterExponent, 1, 2.2, ['filter', 'exponent']],
    [found.uaWPerK, above, Infinity, ['exchanger', 'ua']],
    [found.uaLoopMassFlowKgPerS, above, Infinity, ['exchanger', 'loopFlow']],
    [found.uaFacilityMassFlowKgPerS, above, Infinity, ['exchanger', 'facilityFlow']],
    [found.uaExponent, 0.3, 1, ['exchanger', 'exponent']],
    [found.gasLoadM3PerS, 0, Infinity, ['gasLoad']],
    [found.pumpEfficiency, above, 1, ['pumpEfficiency']],
    [found.plateResistanceKPerW, above, Infinity, ['plate', 'resistance']],
    [found.plateResistanceFixedKPerW, 0, Infinity, ['plate', 'fixed']],
    [found.plateExponent, 0, 1.5, ['plate', 'exponent']],
  ];
  for (const [value, minimum, maximum, keys] of rows)
    if (value !== null && !(value >= minimum && value <= maximum)) fault(keys, expected(minimum, maximum));

  if (found.uaWPerK !== null)
    for (const [flow, key] of [
      [found.uaLoopMassFlowKgPerS, 'loopFlow'],
      [found.uaFacilityMassFlowKgPerS, 'facilityFlow'],
    ] as const)
      if (flow === null) fault(['exchanger', key], 'is missing; a UA holds at its two mass flows only');
  const largest = (main: WettedNode['main']): number =>
    Math.max(0, ...nodes.filter((node) => node.main === main).map((node) => node.lossAtRatedFlowPa));
  const onTheWay = largest('supply') + largest('return');
  if (found.loopLossPa !== null && found.loopLossPa < onTheWay)
    fault(
      ['loop', 'loss'],
      `is less than the losses of the nodes on supply and return together (${(onTheWay / 1000).toFixed(1)} kPa); correct one of them`,
    );
  if (found.filterLossPa !== null && design.filterRatingPa !== null && found.filterLossPa >= design.filterRatingPa)
    fault(['filter', 'loss'], 'is as much as filterRating already; a clean filter has less');
  if (found.plateResistanceKPerW !== null) {
    if (found.plateResistanceFixedKPerW > found.plateResistanceKPerW)
      fault(['plate', 'fixed'], 'is more than the whole resistance; it is a part of it');
    if ((design.plateWallResistanceKPerW ?? 0) > found.plateResistanceKPerW)
      fault(['plate', 'resistance'], 'is less than plateWallResistance, which is a part of it');
  }
}

const expected = (minimum: number, maximum: number): string =>
  maximum === Infinity
    ? `expected ${minimum === 0 ? '0 or more' : 'more than 0'}`
    : `expected ${minimum === Number.MIN_VALUE ? 'more than 0, at most' : `${minimum} to`} ${maximum}`;

/** Whether the period that is called sound says since when, and is long enough to be learnt from. */
export function checkKnownGood({ at }: MergedUnit, { knownGood }: UnitDesign, faults: FaultList): void {
  if (knownGood === null) return;
  if (Number.isNaN(knownGood.fromMs))
    faults.add(at('knownGood', 'from'), 'expected a day of the calendar as year-month-day, such as 2026-03-14');
  if (!(knownGood.hours >= 4 && knownGood.hours <= 720))
    faults.add(at('knownGood', 'hours'), 'expected 4 to 720; less shows no spread, and a month is long enough');
}
