import { parseQuantity } from '@ebbline/shared/contract/site-file-quantity';
import type { WaterInFile, WaterParameterInFile } from '@ebbline/shared/contract/site-file-water';
import {
  handPoint,
  waterParameterIds,
  waterParameters,
  type WaterParameterId,
} from '@ebbline/shared/contract/water-parameters';
import { conductivityCoefficient } from '@ebbline/shared/fluid-properties/conductivity';
import { asMolybdenum } from './as-molybdenum';
import type { EntryLimits, Holder } from './compiled-site';
import type { CompiledWater, CompiledWaterParameter, WaterBand } from './compiled-water';
import { defaultWaterBands } from './default-water-bands';
import type { MergedUnit } from './merge-templates';
import { siOr, siOrNull } from './read-quantities';
import type { FaultList } from './site-fault';

const bandKeys = ['lowLow', 'low', 'high', 'highHigh'] as const;
type BandKey = (typeof bandKeys)[number];

/** Parameters whose sensor's value is worked out from what it reads: at 25 °C, and with the slope put right. */
export const sensorPoint = (id: WaterParameterId): string =>
  id === 'conductivity' ? 'conductivity25' : id === 'ph' ? 'ph' : `water.${id}`;

/** People type what has `byHand`, or a date when it is due. */
export const isByHand = ({ byHand, due }: WaterParameterInFile): boolean => byHand ?? due !== undefined;

/** Points of the parameters that people type, in the order of the contract. */
export const handPointsOf = (water: WaterInFile | undefined): readonly string[] =>
  waterParameterIds.filter((id) => isByHand(water?.parameters?.[id] ?? {})).map(handPoint);

export function compileWater(
  merged: MergedUnit,
  holder: Holder,
  payloadInMillivolt: boolean,
  faults: FaultList,
): CompiledWater {
  const { water } = merged.unit;
  const has = (id: WaterParameterId): boolean => holder.slotOf.has(`water.${id}`);
  const known = waterParameterIds.filter((id) => has(id) || (water?.parameters?.[id] ?? null) !== null);
  return {
    conductivityCoefficient: siOr(water?.conductivityCoefficient, 'ratio', conductivityCoefficient),
    phSlopeOf25: payloadInMillivolt || water?.phElectrode?.compensation === 'none',
    molybdateShownAs: water?.molybdateShownAs ?? 'Mo',
    parameters: known.map((id): CompiledWaterParameter => {
      const file = water?.parameters?.[id] ?? {};
      const dueS = siOrNull(file.due, 'duration');
      if (dueS !== null && !(dueS > 0))
        faults.add(merged.at('water', 'parameters', id, 'due'), 'expected more than 0 s');
      return {
        id,
        band: compileBand(id, file, (key, message) => faults.add(merged.at('water', 'parameters', id, key), message)),
        sensorSlot: has(id) ? (holder.slotOf.get(sensorPoint(id)) ?? -1) : -1,
        handSlot: holder.slotOf.get(handPoint(id)) ?? -1,
        dueMs: dueS === null ? Number.NaN : dueS * 1000,
        lastCalibration: file.lastCalibration ?? null,
      };
    }),
  };
}

function compileBand(
  id: WaterParameterId,
  file: WaterParameterInFile,
  fault: (key: string, message: string) => void,
): WaterBand {
  const standard = defaultWaterBands[id];
  const isStated = bandKeys.some((key) => file[key] !== undefined);
  if (id === 'molybdate' && isStated && file.as === undefined)
    fault('as', 'is missing; say Mo or MoO4: 40 mg/L as Mo is 66.7 mg/L as MoO₄');
  if (id !== 'molybdate' && file.as !== undefined) fault('as', 'goes with molybdate only; take it out');
  const end = (key: BandKey): number => {
    const text = file[key];
    if (text === undefined) return standard[key] ?? Number.NaN;
    const parsed = parseQuantity(text, waterParameters[id].quantity);
    if (!parsed.ok) fault(key, parsed.fault);
    return parsed.ok ? asMolybdenum(id, parsed.value, file.as ?? null) : Number.NaN;
  };
  const band = { lowLow: end('lowLow'), low: end('low'), high: end('high'), highHigh: end('highHigh') };
  const ends = bandKeys.map((key) => band[key]).filter((value) => !Number.isNaN(value));
  if (ends.some((value, i) => i > 0 && !(value > (ends[i - 1] ?? value))))
    fault(
      isStated ? (bandKeys.find((key) => file[key] !== undefined) ?? 'low') : 'low',
      'expected lowLow < low < high < highHigh, those left out with their defaults',
    );
  return { ...band, basis: file.basis ?? (isStated ? 'stated by the site' : standard.basis) };
}

/** Entries that judge the band of one parameter. */
const entriesOfBands = [
  ['CHEM-1', 'conductivity', 'conductivity'],
  ['CHEM-2', 'ph', 'ph'],
  ['CHEM-3', 'bacteria', 'bacteria'],
  ['CHEM-5', 'turbidity', 'turbidity'],
  ['CHEM-4', 'inhibitor', 'copper'],
] as const satisfies readonly (readonly [entry: string, low: WaterParameterId, high: WaterParameterId])[];

/** What the bands of the water say of those entries. */
export function limitsOfBands({ parameters }: CompiledWater): ReadonlyMap<string, EntryLimits> {
  const bandOf = (id: WaterParameterId): WaterBand | undefined => parameters.find((one) => one.id === id)?.band;
  const limits = new Map<string, EntryLimits>();
  for (const [entry, lowOf, highOf] of entriesOfBands) {
    const low = bandOf(lowOf)?.low ?? Number.NaN;
    const limit = bandOf(highOf)?.high ?? Number.NaN;
    const own = {
      ...(Number.isNaN(low) ? {} : { low }),
      ...(Number.isNaN(limit) ? {} : { limit }),
    };
    if (Object.keys(own).length > 0) limits.set(entry, own);
  }
  return limits;
}
