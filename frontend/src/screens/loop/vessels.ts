import type { Site } from '@ebbline/shared/contract/http-api';
import { shapeWords } from '../../text/shape-words';
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
function named(shape: SiteUnit['shape']): readonly Vessel[] {
  const supply = of('supplyTank', shapeWords('Supply tank', shape), 'supplyTankRate');
  const vacuum = of('separator', shapeWords('Separator', shape), 'separatorRate');
  return shape === 'c' ? [vacuum, supply] : [supply, vacuum];
}

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
