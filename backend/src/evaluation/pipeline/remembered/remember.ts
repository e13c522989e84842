import { cellsOfRule } from '../../alarm-rules/rule-memory';
import type { CompiledUnit } from '../../site/compiled-site';
import { clockReached } from '../follow-clock';
import type { PipelineState } from '../pipeline-state';
import { columnsOf, type Column } from './columns-of';
import { toLearnt, type Learnt, type MemoryImage } from './memory-image';
import { namesParts, rememberedParts, ruleNamesParts, shortOutageMs } from './remembered-parts';

/** What this pipeline has learnt, for a file; `recallMemory` of the next one takes it back. */
export function learntSoFar(pipeline: PipelineState, nowMs: number): Learnt {
  const { memory, site } = pipeline;
  const units = site.units.map(({ id }) => id);
  const columns = columnsOf(rememberedParts(pipeline)).filter(({ cells }) => units.length > 0 && cells.length > 0);
  const alarms: number[] = [];
  for (let alarm = 0; alarm < pipeline.index.count; alarm += 1) if (keepsAnything(pipeline, alarm)) alarms.push(alarm);
  const sizes = columns.reduce((sum, { cells }) => sum + cells.length, 0);
  const numbers = new Float64Array(sizes + alarms.length * cellsOfRule);
  let place = 0;
  for (const { cells } of columns) {
    numbers.set(cells, place);
    place += cells.length;
  }
  for (const alarm of alarms)
    for (let cell = 0; cell < cellsOfRule; cell += 1) numbers[place++] = memory.get(alarm, cell);
  return toLearnt({
    savedMs: nowMs,
    units,
    alarms: alarms.map((alarm) => pipeline.index.identity(alarm).alarm),
    parts: site.units.map((unit) => partsOfUnit(pipeline, unit)),
    columns: columns.map(({ path, cells }) => [path, cells.length / units.length] as const),
    numbers,
  });
}

/**
 * Takes back what is still there, unit by unit and alarm by alarm, by their names. Nothing of a memory from later than now: the
 * clock was set back, and its times would lie ahead; it tells only how far the clock had come. Columns that are no more, or hold another number of cells, are left out; so are
 * those that name a branch or plate by its place, of a unit whose branches or plates have changed.
 */
export function recallMemory(pipeline: PipelineState, image: MemoryImage, nowMs: number): void {
  clockReached(pipeline, image.savedMs);
  const outageMs = nowMs - image.savedMs;
  if (!(outageMs >= 0)) return;
  const now = new Map(columnsOf(rememberedParts(pipeline)).map((column) => [column.path, column]));
  const unitNow = new Map(pipeline.site.units.map(({ id }, place) => [id, place]));
  const places = image.units.map((id) => unitNow.get(id) ?? -1);
  const withSameParts = places.map((place, was) => (hasParts(pipeline, place, image.parts[was]) ? place : -1));
  let from = 0;
  for (const [path, cells] of image.columns) {
    const length = cells * image.units.length;
    const column = now.get(path);
    const tooOld = path.startsWith('short.') && outageMs > shortOutageMs;
    if (column !== undefined && !tooOld && column.cells.length === cells * pipeline.site.units.length)
      recallColumn(
        column,
        image.numbers.subarray(from, from + length),
        cells,
        namesParts(path) ? withSameParts : places,
      );
    from += length;
  }
  recallAlarms(pipeline, image, from, new Set(image.units.filter((_, was) => withSameParts[was] !== -1)));
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
