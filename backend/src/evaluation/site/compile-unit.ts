import { liquidWaterDensity, liquidWaterHeatCapacity } from '@ebbline/shared/fluid-properties/liquid-water';
import { celsius } from '@ebbline/shared/units/quantity';
import { compileDesign, compileNodes, compileShape, compileVacuumSource } from './compile-design';
import type { MeasuredPoint } from './compile-holder';
import type { CompiledUnit, EntryLimits, Holder, UnitDesign } from './compiled-site';
import type { MergedUnit } from './merge-templates';
import { noWindowMessage } from './pressure-window-check';
import { siOr, siOrNull } from './read-quantities';
import type { FaultList } from './site-fault';

export const pumpInletPlaceName = 'pump inlet';

/** Names in the order of a unit holder's `places`: nodes, branches, plates, then the pump's inlet. */
export function placesOf({ unit }: MergedUnit): readonly string[] {
  const named = (map: Readonly<Record<string, { readonly name?: string | undefined } | null>> | undefined) =>
    Object.entries(map ?? {}).map(([id, one]) => one?.name ?? id);
  return [...named(unit.nodes), ...named(unit.branches), ...named(unit.plates), pumpInletPlaceName];
}

const defaultMarginPa = 5000;

/** Supply set point + rated heat over rated flow; null where one of them is missing. */
function usualReturnC({ supplySetPointC, ratedHeatW, ratedFlowM3PerS }: UnitDesign): number | null {
  if (supplySetPointC === null || ratedHeatW === null) return null;
  const t = celsius(supplySetPointC);
  return supplySetPointC + ratedHeatW / (ratedFlowM3PerS * liquidWaterDensity(t) * liquidWaterHeatCapacity(t));
}

export interface UnitSurroundings {
  readonly hall: number;
  readonly holder: number;
  readonly gateway: number;
  readonly loop: number;
  readonly altitudeM: number;
  readonly compiledHolder: Holder;
  readonly measured: readonly MeasuredPoint[];
  readonly limits: ReadonlyMap<string, EntryLimits>;
}

export function compileUnit(
  merged: MergedUnit,
  around: UnitSurroundings,
  faults: FaultList,
  warnings: FaultList,
): CompiledUnit {
  const { unit, at } = merged;
  const slot = (id: string): number => around.compiledHolder.slotOf.get(id) ?? -1;
  const shape = compileShape(merged, faults);
  const design = compileDesign(merged, faults);
  const nodes = compileNodes(merged, 0, faults);
  const branchIds = Object.keys(unit.branches ?? {});
  const firstBranchPlace = Object.keys(unit.nodes ?? {}).length;
  const firstPlatePlace = firstBranchPlace + branchIds.length;

  const flowMeter = around.measured.find(({ point }) => point.id === 'loop.flow');
  if (flowMeter !== undefined && flowMeter.hose !== 'supply' && flowMeter.hose !== 'return')
    faults.add(
      [...flowMeter.at(), 'hose'],
      'expected supply or return: a supply-side meter reads a cut as less, a return-side meter as nonsense',
    );

  const window = unit.pressureWindow;
  const loopLossPa = siOrNull(window?.loopLoss, 'pressureDifference');
  const returnC = siOrNull(window?.returnTemperature, 'temperature') ?? usualReturnC(design);
  if (loopLossPa !== null && returnC !== null) {
    const marginPa =
      siOrNull(window?.margin, 'pressureDifference') ?? around.limits.get('MARGIN-1')?.limit ?? defaultMarginPa;
    const message = noWindowMessage({ marginPa, returnC, loopLossPa, design, nodes }, around.altitudeM);
    if (message !== null) (window?.acceptNone === undefined ? faults : warnings).add(at('pressureWindow'), message);
  }

  return {
    id: merged.id,
    name: unit.name,
    hall: around.hall,
    holder: around.holder,
    gateway: around.gateway,
    loop: around.loop,
    shape,
    flowMeterSide: flowMeter?.hose === 'return' ? 'return' : 'supply',
    design,
    nodes,
    branches: branchIds.map((id, i) => ({
      id,
      name: unit.branches?.[id]?.name ?? id,
      ratedFlowM3PerS: siOrNull(unit.branches?.[id]?.ratedFlow, 'volumeFlow'),
      place: firstBranchPlace + i,
      slot: {
        flow: slot(`branch.${id}.flow`),
        returnTemperature: slot(`branch.${id}.return.temperature`),
        returnPressure: slot(`branch.${id}.return.pressure`),
        power: slot(`branch.${id}.power`),
        isolated: slot(`branch.${id}.isolated`),
        waterFound: slot(`branch.${id}.water.found`),
      },
      mainBoreM: null,
      fittings: { restrictorBoreM: null, outletBoreM: null, inletCheckValve: false },
    })),
    servers: [],
    tanks: [],
    plates: Object.entries(unit.plates ?? {}).map(([id, plate], i) => {
      const branch = plate?.branch === undefined ? -1 : branchIds.indexOf(plate.branch);
      if (plate?.branch !== undefined && branch < 0)
        faults.add(
          at('plates', id, 'branch'),
          `there is no branch "${plate.branch}" in this unit; add it or correct the id`,
        );
      return {
        id,
        name: plate?.name ?? id,
        branch,
        server: -1,
        place: firstPlatePlace + i,
        elevationM: siOrNull(plate?.elevation, 'length'),
        slot: { temperature: slot(`plate.${id}.temperature`), power: slot(`plate.${id}.power`) },
      };
    }),
    pumpInletPlace: around.compiledHolder.places.length - 1,
    vacuumSource: compileVacuumSource(merged, faults),
    limits: around.limits,
  };
}

export const siteAltitudeM = (text: string): number => siOr(text, 'length', 0);
