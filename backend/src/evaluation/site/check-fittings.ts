import type { MergedUnit } from './merge-templates';
import { siOrNull } from './read-quantities';
import type { FaultList, FaultPath } from './site-fault';

/**
 * A water column over an opening is unstable above about this bore: air goes up and water comes down, whatever
 * the mean pressure (B. Lautrup, Physics of Continuous Matter; 10 to 15 mm measured, Langmuir 33 (2017) 12903).
 */
export const largestQuietBoreM = 0.0085;

const boreKeys = ['mainBore', 'restrictorBore', 'outletBore'] as const;
type BoreKey = (typeof boreKeys)[number];

/**
 * Whether that is so of a rack's own hose is nothing to warn of: hardly any is narrower, and it can't be otherwise. The
 * summary of the site counts them.
 */
export const widerThanQuiet = (boreM: number | null): boolean => boreM !== null && boreM > largestQuietBoreM;

/** Bores, restrictors and check valves of the branches, and the bore of "one open hose". */
export function checkFittings({ unit, at }: MergedUnit, faults: FaultList, warnings: FaultList): void {
  const spills = (boreM: number | null, path: FaultPath): void => {
    if (boreM !== null && widerThanQuiet(boreM))
      warnings.add(
        path,
        `through an opening of ${millimetres(boreM)} air goes up and water comes down whatever the pressure (above about 8.5 mm; Lautrup, Physics of Continuous Matter): plan a cut here as a spill`,
      );
  };
  const hose = siOrNull(unit.hoseBore, 'length');
  if (hose !== null && !(hose > 0)) faults.add(at('hoseBore'), 'expected more than 0');
  spills(hose, at('hoseBore'));
  const coefficient = unit.openingDischargeCoefficient;
  if (coefficient !== undefined && !(coefficient >= 0.3 && coefficient <= 1))
    faults.add(at('openingDischargeCoefficient'), 'expected 0.3 to 1; usual are 0.6 (sharp hole) to 0.85 (long hole)');

  const shared = unit.fittings ?? {};
  for (const [id, own] of Object.entries(unit.branches ?? {})) {
    const place = (key: BoreKey | 'checkValve'): FaultPath =>
      own?.[key] === undefined ? at('fittings', key) : at('branches', id, key);
    const bore = (key: BoreKey): number | null => siOrNull(own?.[key] ?? shared[key], 'length');
    const main = bore('mainBore');
    for (const key of boreKeys) {
      const boreM = bore(key);
      if (boreM === null) continue;
      if (!(boreM > 0)) faults.add(place(key), 'expected more than 0');
      if (key === 'outletBore') spills(boreM, place(key));
    }
    for (const key of ['restrictorBore', 'outletBore'] as const) {
      const inner = bore(key);
      if (main !== null && inner !== null && inner > main)
        faults.add(
          place(key),
          `${millimetres(inner)} is wider than the rack's own hose (mainBore, ${millimetres(main)}); correct one of them`,
        );
    }
    if (bore('restrictorBore') !== null && !(own?.checkValve ?? shared.checkValve ?? false))
      warnings.add(
        place('restrictorBore'),
        'a restrictor without a check valve: it limits the air that a cut lets in, but only a check valve stops it; say checkValve: true where there is one',
      );
  }
}

const millimetres = (metres: number): string => `${Number((metres * 1000).toFixed(1))} mm`;
