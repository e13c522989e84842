import type { UnitEntryId } from '../alarm-rules/entry-ids';
import type { UnitSlots } from '../alarm-rules/unit-slots';
import type { CompiledUnit } from '../site/compiled-site';

/** What an entry reads, all of it in history: then it can be judged from stored columns alone. */
export interface StoredPoints {
  readonly slots: (slots: UnitSlots, unit: CompiledUnit) => readonly number[];
  /** Derived points whose expanded uncertainty it keeps as a guard. */
  readonly guards?: (slots: UnitSlots) => readonly number[];
  /** The derived point that ends it where it is too small to say anything: history tells that by what is measured for it. */
  readonly ends?: (slots: UnitSlots) => number;
}

const of = (...names: readonly NumberSlot[]): StoredPoints => ({ slots: (slots) => names.map((name) => slots[name]) });

type NumberSlot = { [Name in keyof UnitSlots]: UnitSlots[Name] extends number ? Name : never }[keyof UnitSlots];

/** From what the mode of a unit is told, or inferred. */
export const modeSlots = (slots: UnitSlots): readonly number[] => [
  slots.mode,
  slots.pumpRunning,
  slots.pumpStandbyRunning,
  slots.vacuumRunning,
];

/** Behind the sign that supply and return sensor are swapped, and behind a stop that was meant. */
const ofWater = ['supplyTemperature', 'returnTemperature', 'loopFlow', 'chipPower', 'pumpCommand'] as const;

/**
 * Entries that look at points only, or remember a mean of their own. All others look at windows of many signals, at other alarms or at
 * places, none of which history has: for them everything is worked out anew.
 */
export const storedPoints: Readonly<Partial<Record<UnitEntryId, StoredPoints>>> = {
  'MARGIN-1': { ...of('vacuumMarginWorst'), guards: (slots) => [slots.vacuumMarginWorst] },
  'MARGIN-2': of('vacuumMargin'),
  'VENT-1': of('supplyTankVentCommand', 'supplyTankVentPosition'),
  'WATER-1': {
    slots: (slots, unit) => [
      slots.waterFound,
      slots.trayWaterFound,
      ...unit.branches.map(({ slot }) => slot.waterFound),
    ],
  },
  'AIR-2': { ...of('gasLoad', 'gasAllowance'), guards: (slots) => [slots.gasLoad] },
  'AIR-3': of('openingsCarried', 'vacuumTrapFull'),
  'FLOW-1': { ...of('flowShare', ...ofWater), ends: (slots) => slots.flowShare },
  'FLOW-2': of(...ofWater),
  'TANK-1': { ...of('timeToEmpty', 'pumpSpeed', 'pumpRunning'), ends: (slots) => slots.timeToEmpty },
  'FAC-2': of('facilitySupplyTemperature', ...ofWater),
  'TSUP-2': of(...ofWater),
  'DEW-1': of('dewPointMargin', ...ofWater),
  'DEW-2': of('dewPointMargin', ...ofWater),
  'HX-1': {
    ...of('uaRatio', 'valveCommand', 'heatRemoved', 'facilitySupplyTemperature', ...ofWater),
    ends: (slots) => slots.uaRatio,
  },
  'PUMP-3': { ...of('pumpEfficiency', 'transferFlow', ...ofWater), ends: (slots) => slots.pumpEfficiency },
  'RTH-1': { slots: (slots) => [...slots.plateResistanceRatio] },
  'BAL-1': of('heatBalanceSignificance', ...ofWater),
  'INS-3': of(...ofWater),
};
