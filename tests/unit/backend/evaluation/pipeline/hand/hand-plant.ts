import type { HandAction, HandRecord } from '../../../../../../backend/src/evaluation/pipeline/hand-record';
import { qualityOf, reasonList } from '../../../../../../backend/src/evaluation/slots/quality-reasons';
import { Plant, plantSite } from '../plant';

export const hour = 3_600_000;
export const day = 24 * hour;

/** A unit whose pH, molybdate, copper, chloride and conductivity people type, and whose pH a sensor measures too. */
export const water = {
  molybdateShownAs: 'MoO4',
  parameters: {
    ph: { due: '7 d' },
    molybdate: { low: '30 mg/L', high: '60 mg/L', as: 'Mo', due: '14 d' },
    copper: { byHand: true },
    chloride: { byHand: true },
    conductivity: { low: '10 µS/cm', high: '200 µS/cm', byHand: true },
  },
};
export const sensor = { 'water.ph': { path: 'ph', accuracy: '±0.1', range: '0 to 14' } };

/** Hours and minutes of the catalogue as seconds, so that a test need not wait for them. */
const soon = { onDelay: '20 s', offDelay: '20 s' };
export const limits = { 'CHEM-2': soon, 'CHEM-4': soon, 'CHEM-6': soon, 'CHEM-7': soon };

export const plantWithHand = (points: object = sensor): Plant =>
  new Plant(plantSite({ unit: { water, limits }, points }));

type Enter = Extract<HandAction, { kind: 'enterByHand' }>;
export const entry = (plant: Plant, change: Partial<Enter> = {}): Enter => ({
  kind: 'enterByHand',
  unit: 'm1',
  parameter: 'copper',
  value: 0.05,
  unitOfMeasure: 'mg/L',
  as: null,
  sampleTemperature: null,
  takenMs: plant.nowMs - hour,
  operator: 'Ines',
  station: 's',
  note: '',
  ...change,
});

export function enter(plant: Plant, change: Partial<Enter> = {}): HandRecord {
  const outcome = plant.pipeline.actOnHand(entry(plant, change), plant.nowMs);
  if (!outcome.ok) throw new Error(outcome.message);
  return outcome.record;
}

export function correct(plant: Plant, id: string, value: number, change: Partial<Enter> = {}): HandRecord {
  const { unit, unitOfMeasure, as, sampleTemperature, takenMs, operator, station, note } = entry(plant, change);
  const typed = { unit, unitOfMeasure, as, sampleTemperature, takenMs, operator, station, note };
  const action = { ...typed, kind: 'correctByHand', entry: id, value } as const;
  const outcome = plant.pipeline.actOnHand(action, plant.nowMs);
  if (!outcome.ok) throw new Error(outcome.code);
  return outcome.record;
}

export function withdraw({ pipeline, nowMs }: Plant, id: string): HandRecord {
  const signed = { unit: 'm1', operator: 'Ines', station: 's', note: 'of another unit' };
  const outcome = pipeline.actOnHand({ ...signed, kind: 'withdrawByHand', entry: id }, nowMs);
  if (!outcome.ok) throw new Error(outcome.code);
  return outcome.record;
}

/** What history is given of one hand point: second and value, a bad one as NaN; those of before are taken out. */
export function toHistory({ pipeline, nowMs }: Plant, id: string): (readonly [number, number])[] {
  const rows = pipeline.drainHistory(nowMs, true);
  const { holders } = pipeline.site;
  const holder = holders.findIndex((one) => one.id === 'm1');
  const column = (holders[holder]?.slotOf.get(id) ?? 0) - (holders[holder]?.firstSlot ?? 0);
  return Array.from(rows?.holder ?? [], (of, row) => ({ of, row, at: (rows?.offset[row] ?? 0) + column }))
    .filter(({ of, at }) => of === holder && (rows?.quality[at] ?? 0) !== 0)
    .map(({ row, at }) => [rows?.secondMs[row] ?? NaN, rows?.values[at] ?? NaN] as const);
}

/** Value, age in seconds and quality of a point, as a screen has them. */
export function pointOf({ pipeline, nowMs }: Plant, id: string) {
  const { site, state } = pipeline;
  const slot = site.holders.find((holder) => holder.id === 'm1')?.slotOf.get(id) ?? -1;
  const reasons = state.reasons[slot] ?? 0;
  const age = (nowMs - (state.sourceMs[slot] ?? Number.NaN)) / 1000;
  return { value: state.value[slot], age, quality: qualityOf(reasons), reasons: reasonList(reasons) };
}
