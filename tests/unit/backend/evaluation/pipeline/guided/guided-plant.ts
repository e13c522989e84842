import type { GuidedGiven, GuidedKind } from '@ebbline/shared/contract/guided-test';
import type {
  GuidedAction,
  GuidedOutcome,
  GuidedRecord,
} from '../../../../../../backend/src/evaluation/pipeline/guided/guided-record';
import { Plant, plantSite, type PlantOptions } from '../plant';

/** Pressures of both mains and at the pump's inlet, whose elevations the unit states. */
const gauge = (path: string): object => ({ path, unit: 'kPa', reference: 'gauge', accuracy: '±0.4 kPa' });
const absolute = (path: string): object => ({ path, unit: 'kPa', reference: 'absolute', accuracy: '±0.4 kPa' });

export const elevations = {
  supplyTankSurface: '1.0 m',
  separatorSurface: '0.6 m',
  returnInlet: '1.0 m',
  pumpInlet: '0.15 m',
  supplySensor: '0.2 m',
  returnSensor: '0.3 m',
  accuracy: '5 mm',
} as const;

interface ZeroOptions extends PlantOptions {
  readonly unit?: { readonly elevations?: object; readonly tanks?: object };
}
export const zeroSite = (more: ZeroOptions = {}) =>
  plantSite({
    modePoint: true,
    ...more,
    unit: {
      elevations,
      ...more.unit,
      tanks: {
        supplyArea: '0.3 m2',
        separatorArea: '0.25 m2',
        supplyUsualLevel: '0.5 m',
        separatorUsualLevel: '0.6 m',
        ...more.unit?.tanks,
      },
    },
    points: {
      'supply.pressure': gauge('pSupply'),
      'return.pressure': gauge('pReturn'),
      'pump.inlet.pressure': absolute('pInlet'),
      ...more.points,
    },
  });

/** Head of water at 25 °C, kPa a metre: 997.05 kg/m³ (IAPWS SR6-08) × 9.80665 m/s². */
export const headKpaPerM = (997.05 * 9.80665) / 1000;

/** A unit that was vented for other work and stands; each sensor reads what it has to, plus what `off` says, kPa. */
export function ventedPlant(off: Readonly<Record<string, number>> = {}, site = zeroSite()): Plant {
  const plant = new Plant(site);
  const at = (name: string): number => off[name] ?? 0;
  Object.assign(plant.m1, {
    tSupply: 25,
    tReturn: 25,
    flow: 0,
    vacuumSpeed: 0,
    vacuumRunning: false,
    pumpRunning: false,
    mode: 'vented',
    pTank: 101.3 + at('tank'),
    pSeparator: 101.3 + at('separator'),
    pSupply: 0.8 * headKpaPerM + at('supply'),
    pReturn: 0.7 * headKpaPerM + at('return'),
    pInlet: 101.3 + 0.45 * headKpaPerM + at('inlet'),
  });
  return plant.run(10);
}

type Wish = GuidedAction extends infer A
  ? A extends GuidedAction
    ? Omit<A, 'unit' | 'operator' | 'station' | 'comment'> & { readonly operator?: string }
    : never
  : never;

export const act = (plant: Plant, wish: Wish, commit?: () => boolean): GuidedOutcome =>
  plant.pipeline.actOnGuided({ unit: 'm1', operator: 'Ada', station: 's', comment: '', ...wish }, plant.nowMs, commit);

export const begin = (plant: Plant, kind: GuidedKind, settings: GuidedGiven = {}): GuidedOutcome =>
  act(plant, { act: 'start', kind, settings });

export function newest(plant: Plant): GuidedRecord {
  const record = plant.pipeline.guidedTests().at(-1);
  if (record === undefined) throw new Error('no test is known');
  return record;
}

/** Confirms the present step. */
export function confirm(plant: Plant, given: GuidedGiven = {}, step?: string): GuidedOutcome {
  const { id, steps, at } = newest(plant);
  return act(plant, { act: 'confirm', test: id, step: step ?? steps[at]?.id ?? '', given });
}

/** Confirms steps until the program measures. */
export function confirmUntilMeasured(plant: Plant, given: Readonly<Record<string, GuidedGiven>> = {}): void {
  while (newest(plant).state === 'confirm') {
    const { steps, at } = newest(plant);
    const step = steps[at]?.id ?? '';
    const outcome = confirm(plant, given[step] ?? {}, step);
    if (!outcome.ok) throw new Error(`${outcome.code}: ${outcome.message}`);
  }
}

/** Noise of ±1 that repeats itself: a sum of sines, so that no chance is in it. */
export const noise = (second: number): number => (Math.sin(second * 2.399) + Math.sin(second * 5.1 + 1)) / Math.SQRT2;
