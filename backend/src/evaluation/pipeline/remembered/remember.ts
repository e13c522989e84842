import { cellsOfRule } from '../../alarm-rules/rule-memory';
import type { CompiledUnit } from '../../site/compiled-site';
import { clockReached } from '../follow-clock';
import type { PipelineState } from '../pipeline-state';
import { columnsOf, type Column } from './columns-of';
import { toLearnt, type ColumnHead, type Learnt, type MemoryImage } from './memory-image';
import { isTooOld, namesParts, rememberedOfHalls, rememberedParts, ruleNamesParts } from './remembered-parts';

/** What this pipeline has learnt, for a file; `recallMemory` of the next one takes it back. */
export function learntSoFar(pipeline: PipelineState, nowMs: number): Learnt {
  const { memory, site } = pipeline;
  const units = site.units.map(({ id }) => id);
  const halls = site.halls.map(({ id }) => id);
  const columns = filledColumns(rememberedParts(pipeline));
  const ofHalls = filledColumns(rememberedOfHalls(pipeline));
  const alarms: number[] = [];
  for (let alarm = 0; alarm < pipeline.index.count; alarm += 1) if (keepsAnything(pipeline, alarm)) alarms.push(alarm);
  const sizes = [...columns, ...ofHalls].reduce((sum, { cells }) => sum + cells.length, 0);
  const numbers = new Float64Array(sizes + alarms.length * cellsOfRule);
  let place = 0;
  for (const { cells } of columns) {
    numbers.set(cells, place);
    place += cells.length;
  }
  for (const alarm of alarms)
    for (let cell = 0; cell < cellsOfRule; cell += 1) numbers[place++] = memory.get(alarm, cell);
  for (const { cells } of ofHalls) {
    numbers.set(cells, place);
    place += cells.length;
  }
  return toLearnt({
    savedMs: nowMs,
    units,
    alarms: alarms.map((alarm) => pipeline.index.identity(alarm).alarm),
    parts: site.units.map((unit) => partsOfUnit(pipeline, unit)),
    columns: columns.map(({ path, cells }) => [path, cells.length / units.length] as const),
    halls,
    hallColumns: ofHalls.map(({ path, cells }) => [path, cells.length / halls.length] as const),
    numbers,
  });
}

/** Of no place at all a column has no cells. */
const filledColumns = (parts: object): readonly Column[] => columnsOf(parts).filter(({ cells }) => cells.length > 0);

/**
 * Takes back what is still there, unit by unit, alarm by alarm and hall by hall, by their names. Nothing of a memory from later than now: the
 * clock was set back, and its times would lie ahead; it tells only how far the clock had come. Columns that are no more, or hold another number of cells, are left out; so are
 * those that name a branch or plate by its place, of a unit whose branches or plates have changed.
 */
export function recallMemory(pipeline: PipelineState, image: MemoryImage, nowMs: number): void {
  clockReached(pipeline, image.savedMs);
  const outageMs = nowMs - image.savedMs;
  if (!(outageMs >= 0)) return;
  const { halls, units } = pipeline.site;
  const places = placesOf(image.units, units);
  const withSameParts = places.map((place, was) => (hasParts(pipeline, place, image.parts[was]) ? place : -1));
  const ofUnits = { now: rememberedParts(pipeline), count: units.length, outageMs };
  const from = recallColumns(ofUnits, image.columns, image.numbers, (path) =>
    namesParts(path) ? withSameParts : places,
  );
  recallAlarms(pipeline, image, from, new Set(image.units.filter((_, was) => withSameParts[was] !== -1)));
  const hallPlaces = placesOf(image.halls, halls);
  const ofHalls = { now: rememberedOfHalls(pipeline), count: halls.length, outageMs };
  const behindAlarms = image.numbers.subarray(from + image.alarms.length * cellsOfRule);
  recallColumns(ofHalls, image.hallColumns, behindAlarms, () => hallPlaces);
}

/** Where each of these ids stands now; −1 where it is no more. */
function placesOf(ids: readonly string[], now: readonly { readonly id: string }[]): readonly number[] {
  const places = new Map(now.map(({ id }, place) => [id, place]));
  return ids.map((id) => places.get(id) ?? -1);
}

/** Gives the number behind the last cell. `placesBy`: from places then to places now, for a column. */
function recallColumns(
  { now, count, outageMs }: { readonly now: object; readonly count: number; readonly outageMs: number },
  columns: readonly ColumnHead[],
  numbers: Float64Array,
  placesBy: (path: string) => readonly number[],
): number {
  const columnNow = new Map(columnsOf(now).map((column) => [column.path, column]));
  let from = 0;
  for (const [path, cells] of columns) {
    const places = placesBy(path);
    const length = cells * places.length;
    const column = columnNow.get(path);
    if (column !== undefined && !isTooOld(path, outageMs) && column.cells.length === cells * count)
      recallColumn(column, numbers.subarray(from, from + length), cells, places);
    from += length;
  }
  return from;
}

const partsOfUnit = ({ site }: PipelineState, { branches, holder, plates }: CompiledUnit): readonly string[] => [
  ...branches.map(({ id }) => `branch.${id}`),
  ...plates.map(({ id }) => `plate.${id}`),
  ...(site.holders[holder]?.places ?? []).map((place) => `place.${place}`),
];

function hasParts(pipeline: PipelineState, place: number, were: readonly string[] = []): boolean {
  const unit = pipeline.site.units[place];
  if (unit === undefined) return false;
  const are = partsOfUnit(pipeline, unit);
  return are.length === were.length && are.every((id, i) => id === were[i]);
}

function recallColumn({ cells }: Column, numbers: Float64Array, size: number, places: readonly number[]): void {
  places.forEach((place, was) => {
    if (place >= 0) cells.set(numbers.subarray(was * size, (was + 1) * size), place * size);
  });
}

function recallAlarms(
  { index, memory }: PipelineState,
  { alarms, numbers }: MemoryImage,
  from: number,
  withSameParts: ReadonlySet<string>,
): void {
  if (alarms.length === 0) return;
  const places = index.byName();
  alarms.forEach((name, was) => {
    const alarm = places.get(name);
    if (alarm === undefined) return;
    const { entry, unit } = index.identity(alarm);
    if (ruleNamesParts(entry) && !withSameParts.has(unit ?? '')) return;
    for (let cell = 0; cell < cellsOfRule; cell += 1)
      memory.set(alarm, cell, numbers[from + was * cellsOfRule + cell] as number);
  });
}

function keepsAnything({ memory }: PipelineState, alarm: number): boolean {
  for (let cell = 0; cell < cellsOfRule; cell += 1) if (!Number.isNaN(memory.get(alarm, cell))) return true;
  return false;
}
