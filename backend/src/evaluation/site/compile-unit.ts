import type { Fluid } from '@ebbline/shared/fluid-properties/fluid';
import { celsius } from '@ebbline/shared/units/quantity';
import { compileDesign, compileNodes, compileShape, compileVacuumSource } from './compile-design';
import type { MeasuredPoint } from './compile-holder';
import { compileParts } from './compile-parts';
import type { CompiledUnit, Holder, UnitDesign } from './compiled-site';
import { checkFluidRange, compileFluid } from './compile-fluid';
import { fluidOf } from './compiled-fluid';
import { compileMatchedPairs } from './matched-pairs';
import type { MergedUnit } from './merge-templates';
import { checkFigures } from './check-figures';
import { checkParts } from './check-parts';
import { noWindowMessage } from './pressure-window-check';
import { mergeLevels, overBands } from './compile-limits';
import { compileWater, limitsOfBands } from './compile-water';
import type { LimitLevels } from './compiled-unit';
import { siOr, siOrNull } from './read-quantities';
import type { FaultList } from './site-fault';

const defaultMarginPa = 5000;

/** Supply set point + rated heat over rated flow; null where one of them is missing. */
function usualReturnC(
  { supplySetPointC, ratedHeatW, ratedFlowM3PerS }: UnitDesign,
  { density, heatCapacity }: Fluid,
): number | null {
  if (supplySetPointC === null || ratedHeatW === null) return null;
  const t = celsius(supplySetPointC);
  return supplySetPointC + ratedHeatW / (ratedFlowM3PerS * density(t) * heatCapacity(t));
}

/** An electrode that sends its voltage has the pH falling with it. */
const isInMillivolt = (measured: readonly MeasuredPoint[]): boolean =>
  measured.some(({ point }) => point.id === 'water.ph' && point.factor < 0);

export interface UnitSurroundings {
  readonly hall: number;
  readonly holder: number;
  readonly gateway: number;
  readonly loop: number;
  readonly altitudeM: number;
  readonly compiledHolder: Holder;
  readonly measured: readonly MeasuredPoint[];
  readonly levels: Omit<LimitLevels, 'bands'>;
}

export function compileUnit(
  merged: MergedUnit,
  around: UnitSurroundings,
  faults: FaultList,
  warnings: FaultList,
): CompiledUnit {
  const { unit, at } = merged;
  const { site, hall, unit: own } = around.levels;
  const limits = mergeLevels([site, hall, own]);
  const slot = (id: string): number => around.compiledHolder.slotOf.get(id) ?? -1;
  const shape = compileShape(merged, faults);
  const design = compileDesign(merged, faults);
  const nodes = compileNodes(merged, 0, faults);
  checkParts(merged, faults, warnings);
  checkFigures(merged, design, nodes, faults, warnings);

  const water = compileWater(merged, around.compiledHolder, isInMillivolt(around.measured), faults);
  const bands = limitsOfBands(water);
  const flowMeter = around.measured.find(({ point }) => point.id === 'loop.flow');
  if (flowMeter !== undefined && flowMeter.hose !== 'supply' && flowMeter.hose !== 'return')
    faults.add(
      [...flowMeter.at(), 'hose'],
      'expected supply or return: a supply-side meter reads a cut as less, a return-side meter as nonsense',
    );

  const fluid = compileFluid(merged, 'fluid', faults);
  const facilityFluid = compileFluid(merged, 'facilityFluid', faults);
  const window = unit.pressureWindow;
  const loopLossPa = siOrNull(window?.loopLoss, 'pressureDifference') ?? design.commissioned.loopLossPa;
  const returnC = siOrNull(window?.returnTemperature, 'temperature') ?? usualReturnC(design, fluidOf(fluid));
  checkFluidRange(merged, 'fluid', fluid, [design.supplySetPointC, returnC], faults);
  checkFluidRange(merged, 'facilityFluid', facilityFluid, [design.facilityDesignSupplyC], faults);
  if (loopLossPa !== null && returnC !== null) {
    const marginPa = siOrNull(window?.margin, 'pressureDifference') ?? limits.get('MARGIN-1')?.limit ?? defaultMarginPa;
    const message = noWindowMessage(
      { marginPa, returnC, loopLossPa, design, nodes, fluid: fluidOf(fluid) },
      around.altitudeM,
    );
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
    fluid,
    facilityFluid,
    flowMeterSide: flowMeter?.hose === 'return' ? 'return' : 'supply',
    design,
    nodes,
    ...compileParts(unit, design.fanPath, slot),
    matchedPairs: compileMatchedPairs(merged, around.compiledHolder, faults),
    pumpInletPlace: around.compiledHolder.places.length - 1,
    vacuumSource: compileVacuumSource(merged, faults),
    limits: overBands(bands, limits),
    limitLevels: { bands, ...around.levels },
    water,
  };
}

export const siteAltitudeM = (text: string): number => siOr(text, 'length', 0);
