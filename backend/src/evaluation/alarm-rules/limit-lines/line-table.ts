import { lowerWallGuardPa } from '../../derive/derive-constants';
import type { CompiledUnit } from '../../site/compiled-site';
import { openValve } from '../catalogue/hx-1';
import { shareOfRating } from '../catalogue/fil-2';
import type { Limits } from '../entry';
import type { UnitEntryId } from '../entry-ids';

/** Where a limit stands beside a point that can be drawn; NaN where this unit has none. */
export interface LineRow {
  /** Pattern of the point table. */
  readonly point: string;
  /** The side on which the alarm stands. */
  readonly side: 'below' | 'above';
  /** In the unit of measure of the point. `supplySetPointC` is that of now. */
  readonly at: (limits: Limits, unit: CompiledUnit, supplySetPointC: number) => number;
}

const itself = ({ limit }: Limits): number => limit;
const orNone = (value: number | null): number => value ?? Number.NaN;
const below = (point: string, at: LineRow['at'] = itself): LineRow => ({ point, side: 'below', at });
const above = (point: string, at: LineRow['at'] = itself): LineRow => ({ point, side: 'above', at });
const band = (point: string): readonly LineRow[] => [below(point, ({ low }) => low ?? Number.NaN), above(point)];

/** Entries whose limit is one number beside one point. Steps, rates, moving and yes/no limits have no line. */
export const lineTable: Readonly<Partial<Record<UnitEntryId, readonly LineRow[]>>> = {
  'MARGIN-1': [below('vacuumMarginWorst')],
  'MARGIN-2': [below('vacuumMargin')],
  'BOIL-1': [below('boilingMargin', ({ limit }) => (Number.isNaN(limit) ? lowerWallGuardPa.node : limit))],
  'FLOW-2': [below('loop.flow', ({ limit }, { design }) => limit * design.ratedFlowM3PerS)],
  'TSUP-1': [above('supply.temperature', ({ limit }, _unit, supplySetPointC) => supplySetPointC + limit)],
  'TSUP-2': [above('supply.temperature', ({ limit }, { design }) => orNone(design.supplyClassLimitC) + limit)],
  'DEW-1': [below('dewPointMargin')],
  'DEW-2': [below('dewPointMargin')],
  'FAC-2': [
    above('facility.supply.temperature', ({ limit }, { design }) => orNone(design.facilityDesignSupplyC) + limit),
  ],
  'PUMP-3': [below('pumpEfficiency', ({ limit }, { design }) => orNone(design.commissioned.pumpEfficiency) - limit)],
  'HX-1': [below('uaRatio'), above('valve.command', () => openValve)],
  'FIL-1': [above('filterResistance')],
  'FIL-2': [
    above('filterResistance'),
    above('filter.pressureDrop', (_limits, { design }) => shareOfRating * orNone(design.filterRatingPa)),
  ],
  'CHEM-1': ['conductivity25', 'water.conductivity.hand'].flatMap(band),
  'CHEM-2': ['ph', 'water.ph', 'water.ph.hand'].flatMap(band),
  'CHEM-3': ['water.bacteria', 'water.bacteria.hand'].flatMap(band),
  'CHEM-4': [
    ...['water.inhibitor', 'water.inhibitor.hand'].map((point) => below(point, ({ low }) => low ?? Number.NaN)),
    ...['water.copper', 'water.copper.hand'].map((point) => above(point)),
  ],
  'CHEM-5': ['water.turbidity', 'water.turbidity.hand'].flatMap(band),
  'RTH-1': [above('plate.<id>.resistanceRatio')],
  'BAL-1': [above('heatBalanceSignificance'), below('heatBalanceSignificance', ({ limit }) => -limit)],
};
