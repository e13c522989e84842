import type { Site } from '@ebbline/shared/contract/http-api';
import type { FactRow } from './chapter-points';
import type { PointMap } from './point-map';

/** A tank to be drawn, by the points that belong to it. */
export interface Vessel {
  readonly id: string;
  readonly name: string;
  readonly level: string;
  readonly rate: string | null;
  readonly facts: readonly FactRow[];
}

type SiteUnit = Site['units'][number];

const of = (id: string, name: string, rate: string): Vessel => ({
  id,
  name,
  level: `${id}.level`,
  rate,
  facts: [
    [`${id}.level`, 'level'],
    [`${id}.pressure`, 'pressure'],
    [`${id}.setPoint`, 'set point'],
  ],
});

/** In shape c the pump draws straight from the vacuum reservoir, which stands where the separator does. */
const named = (shape: SiteUnit['shape']): readonly Vessel[] =>
  shape === 'c'
    ? [of('separator', 'Vacuum reservoir', 'separatorRate'), of('supplyTank', 'Supply tank', 'supplyTankRate')]
    : [of('supplyTank', 'Supply tank', 'supplyTankRate'), of('separator', 'Separator', 'separatorRate')];

/** The tanks that the unit has: those that its site file lists (alternating ones in shape b), and those of its shape. */
export function vesselsOf(unit: SiteUnit | undefined, points: PointMap): readonly Vessel[] {
  const listed = (unit?.tanks ?? []).map(({ id, name }) => ({
    id: `tank.${id}`,
    name,
    level: `tank.${id}.level`,
    rate: null,
    facts: [
      [`tank.${id}.level`, 'level'],
      [`tank.${id}.pressure`, 'pressure'],
    ] as const,
  }));
  return [...listed, ...named(unit?.shape ?? 'a')].filter(({ facts }) => facts.some(([id]) => points.has(id)));
}
