import type { SiteFile } from '@ebbline/shared/contract/site-file';
import type { CompiledLoop } from './compiled-site';
import type { MergedUnit } from './merge-templates';
import type { FaultList } from './site-fault';

export interface LoopPlan {
  readonly loops: readonly CompiledLoop[];
  readonly ofUnit: readonly number[];
}

/** Loops of the file first, then one for each unit that is on none; checked against each other and the units. */
export function planLoops(
  file: SiteFile,
  units: readonly MergedUnit[],
  faults: FaultList,
  warnings: FaultList,
): LoopPlan {
  const placeOf = new Map(units.map(({ id }, i) => [id, i]));
  const loops: CompiledLoop[] = [];
  const ofUnit: number[] = units.map(() => -1);
  for (const [id, loop] of Object.entries(file.loops ?? {})) {
    const own = new Set<number>();
    loop.units.forEach((unit, i) => {
      const at = ['loops', id, 'units', i];
      const place = placeOf.get(unit);
      if (place === undefined) {
        faults.add(at, `there is no unit "${unit}"; add it or correct the id`);
        return;
      }
      const other = ofUnit[place] ?? -1;
      if (own.has(place)) faults.add(at, `unit "${unit}" stands here twice; take one out`);
      else if (other >= 0)
        faults.add(at, `unit "${unit}" is on loop "${loops[other]?.id ?? ''}" already; a unit is on one loop`);
      else {
        own.add(place);
        ofUnit[place] = loops.length;
      }
    });
    checkTogether(id, [...own], units, faults, warnings);
    const unitsNeeded = loop.unitsNeeded ?? Math.max(1, own.size);
    if (unitsNeeded > loop.units.length)
      faults.add(['loops', id, 'unitsNeeded'], `the loop has ${loop.units.length} units; it can not need more`);
    const alone = placeOf.get(id);
    if (alone !== undefined && !own.has(alone))
      faults.add(['loops', id], `a unit that is not on this loop has the same id; give the loop another one`);
    loops.push({ id, name: loop.name ?? id, units: [...own], unitsNeeded });
  }
  units.forEach(({ id, unit }, i) => {
    if ((ofUnit[i] ?? -1) >= 0) return;
    ofUnit[i] = loops.length;
    loops.push({ id, name: unit.name, units: [i], unitsNeeded: 1 });
  });
  return { loops, ofUnit };
}

function checkTogether(
  id: string,
  own: readonly number[],
  units: readonly MergedUnit[],
  faults: FaultList,
  warnings: FaultList,
): void {
  const distinct = (of: (unit: MergedUnit['unit']) => string | undefined): readonly string[] => [
    ...new Set(own.flatMap((i) => of(units[i]?.unit ?? ({} as MergedUnit['unit'])) ?? [])),
  ];
  const halls = distinct(({ hall }) => hall);
  if (halls.length > 1)
    faults.add(
      ['loops', id, 'units'],
      `its units stand in several halls (${halls.join(', ')}); one loop is judged against one ambient pressure: put its units in one hall`,
    );
  const fluids = distinct(({ fluid }) => JSON.stringify(fluid ?? { kind: 'water' }));
  if (fluids.length > 1)
    faults.add(
      ['loops', id, 'units'],
      'its units state different fluids; one loop holds one liquid: state the same fluid for all, best in their template',
    );
  const shapes = distinct(({ shape }) => shape);
  if (shapes.length > 1)
    warnings.add(
      ['loops', id, 'units'],
      `its units are of several plant shapes (${shapes.join(', ')}); check them: their tanks trade water in different ways`,
    );
}
