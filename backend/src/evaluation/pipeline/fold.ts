import type { Priority } from '@ebbline/shared/contract/alarm';
import { unitEntries } from '../alarm-rules/catalogue/catalogue';
import type { UnitEntry } from '../alarm-rules/entry';
import { unitEntryPlace, type UnitEntryId } from '../alarm-rules/entry-ids';
import {
  foldsAcrossHall,
  foldsAcrossLoop,
  foldsOnBranchOnly,
  foldsOnCirculation,
  foldsOnPowerLost,
  foldsUnder,
  foldsUnderEarlier,
  foldsUntilKnown,
} from '../alarm-rules/folding';
import { airWasToldAt } from '../alarm-rules/air-step/second-opening';
import { inPowerEvent } from '../alarm-rules/plant-signs/power-lost';
import { priorityOfEntry } from '../alarm-rules/priority-of-entry';
import { sumStands } from '../alarm-rules/walk-sign';
import type { CompiledUnit } from '../site/compiled-site';
import { airFirstOutOfLoop } from './air-across-loop';
import { earlierFirstOut, isOldNews, sinceOf, standsOrOutlasts } from './fold-earlier';
import { hallFirstOut, wasFirstOutOfHall } from './hall-first-out';
import { refoldInstruments } from './fold-instruments';
import { branchOfPart, partsOf } from './part-index';
import type { PipelineState } from './pipeline-state';
import { showAlert } from './alerts';

const tables = [foldsUnder, foldsUnderEarlier, foldsOnPowerLost, foldsOnCirculation, foldsAcrossLoop, foldsAcrossHall];
const folding = unitEntries.flatMap(({ id }, place) =>
  tables.some((table) => table[id] !== undefined) ? [place] : [],
);

/**
 * Name of the first-out that an alarm of a unit folds under now, or null. Where that one is folded itself, its own first-out.
 * @param toldWith the priority that the alarm is about to be told with; null: that of its record
 */
export function foldParent(
  pipeline: PipelineState,
  unitIndex: number,
  place: number,
  part: number,
  toldWith: Priority | null = null,
): string | null {
  const entry = unitEntries[place] as UnitEntry;
  const own = foldsUnder[entry.id];
  const ofOwn = own === undefined ? null : ofSameUnit(pipeline, unitIndex, entry, part, own);
  if (ofOwn !== null) return ofOwn;
  const earlier = earlierFirstOut(pipeline, unitIndex, entry, toldWith);
  if (earlier !== null) return earlier;
  const onPowerLost = foldsOnPowerLost[entry.id];
  if (onPowerLost !== undefined && inPowerEvent({ plant: pipeline.plant, unitIndex })) {
    const name = standingOf(pipeline, unitIndex, onPowerLost);
    if (name !== null) return name;
  }
  const onCirculation = foldsOnCirculation[entry.id];
  if (onCirculation !== undefined && pipeline.site.units[unitIndex]?.shape === 'c') {
    const name = noMilder(pipeline, unitIndex, entry, onCirculation);
    if (name !== null) return name;
  }
  const air = airFirstOutOfLoop(pipeline, unitIndex, entry.id);
  if (air >= 0) return nameOf(pipeline, air);
  const across = foldsAcrossLoop[entry.id];
  if (across !== undefined && sumStands(pipeline.state, pipeline.unitSlots[unitIndex])) {
    const name = ofOtherUnits(pipeline, unitIndex, across);
    if (name !== null) return name;
  }
  const hall = foldsAcrossHall[entry.id];
  return hall === undefined ? null : hallFirstOut(pipeline, unitIndex, place, hall);
}

/** Looks again at all that may fold in a unit, and at what hangs on it in other units of its loop and its hall. */
export function refoldUnit(pipeline: PipelineState, unitIndex: number): void {
  const { loop, hall } = pipeline.site.units[unitIndex] as CompiledUnit;
  const ledHall = wasFirstOutOfHall(pipeline, unitIndex);
  refoldOwn(pipeline, unitIndex);
  if (!ledHall) {
    refoldOthers(pipeline, unitIndex, pipeline.site.loops[loop]?.units);
    return;
  }
  // The first pass finds the next first-out, the second puts the others under it.
  refoldOthers(pipeline, unitIndex, pipeline.site.halls[hall]?.units);
  refoldOthers(pipeline, unitIndex, pipeline.site.halls[hall]?.units);
}

function refoldOthers(pipeline: PipelineState, unitIndex: number, units: readonly number[] = []): void {
  for (const other of units) if (other !== unitIndex) refoldOwn(pipeline, other);
}

/** A first-out may fold in turn after what is under it was looked at: then once more. */
function refoldOwn(pipeline: PipelineState, unitIndex: number): void {
  for (let pass = 0; pass < mostPasses; pass += 1) if (!refoldOnce(pipeline, unitIndex)) break;
  refoldInstruments(pipeline, unitIndex);
}

const mostPasses = 3;

function refoldOnce(pipeline: PipelineState, unitIndex: number): boolean {
  const { index } = pipeline;
  let changed = false;
  for (const place of folding) {
    const base = index.ofUnit(unitIndex) + place;
    const { per } = unitEntries[place] as UnitEntry;
    if (per === undefined) {
      if (refoldOne(pipeline, unitIndex, place, -1, base)) changed = true;
    } else {
      const first = index.parts.of(unitIndex, place);
      const count = partsOf(pipeline.site.units[unitIndex] as CompiledUnit, per).length;
      for (let part = 0; part < count; part += 1)
        if (refoldOne(pipeline, unitIndex, place, part, first + part)) changed = true;
    }
  }
  return changed;
}

function refoldOne(pipeline: PipelineState, unitIndex: number, place: number, part: number, alarm: number): boolean {
  if (pipeline.book.record(alarm) === null && !pipeline.alerts.has(alarm)) return false;
  const parent = foldParent(pipeline, unitIndex, place, part);
  const changed = pipeline.book.fold(alarm, parent);
  showAlert(pipeline, alarm, parent === null, pipeline.steppedMs[unitIndex] as number);
  return changed;
}

/** As long as the first-out of a power event stands in the list, be it that the machine itself is back. */
function standingOf(pipeline: PipelineState, unitIndex: number, parents: readonly UnitEntryId[]): string | null {
  for (const parent of parents) {
    const record = pipeline.book.told(pipeline.index.ofUnit(unitIndex) + unitEntryPlace[parent]);
    if (record !== null) return record.foldedUnder ?? record.alarm;
  }
  return null;
}

/** Only under an alarm that is as urgent as what it hides. */
function noMilder(
  pipeline: PipelineState,
  unitIndex: number,
  entry: UnitEntry,
  parents: readonly UnitEntryId[],
): string | null {
  const own = priorityOfEntry(entry, false) ?? Number.POSITIVE_INFINITY;
  for (const parent of parents) {
    const record = pipeline.book.told(pipeline.index.ofUnit(unitIndex) + unitEntryPlace[parent]);
    if (record !== null && record.priority <= own && standsOrOutlasts(pipeline, unitIndex, record, entry.id))
      return record.foldedUnder ?? record.alarm;
  }
  return null;
}

function ofSameUnit(
  pipeline: PipelineState,
  unitIndex: number,
  entry: UnitEntry,
  part: number,
  parents: readonly UnitEntryId[],
): string | null {
  for (const parent of parents) {
    const name = activeAlarm(pipeline, unitIndex, entry, part, parent);
    if (name !== null) return name;
  }
  return null;
}

/** Name of the parent's alarm where it is in alarm for this very part, or null. */
function activeAlarm(
  pipeline: PipelineState,
  unitIndex: number,
  child: UnitEntry,
  part: number,
  parent: UnitEntryId,
): string | null {
  const { delays, index, site } = pipeline;
  const place = unitEntryPlace[parent];
  const base = index.ofUnit(unitIndex) + place;
  if (delays.active[base] !== 1) return null;
  const unit = site.units[unitIndex] as CompiledUnit;
  const branch = child.per === undefined ? -1 : branchOfPart(unit, child.per, part);
  const per = unitEntries[place]?.per;
  if (per === 'branch') return branch < 0 ? null : nameOf(pipeline, index.parts.of(unitIndex, place) + branch);
  if (
    foldsOnBranchOnly[child.id]?.includes(parent) &&
    !airWasToldAt(pipeline.air, pipeline.memory, unitIndex, base, branch)
  )
    return null;
  if (
    foldsUntilKnown[child.id]?.includes(parent) &&
    isOldNews(pipeline.book.told(base), beganAt(pipeline, unitIndex, child, part))
  )
    return null;
  return nameOf(pipeline, base);
}

function beganAt(pipeline: PipelineState, unitIndex: number, { id, per }: UnitEntry, part: number): number {
  const { index } = pipeline;
  const place = unitEntryPlace[id];
  return sinceOf(
    pipeline,
    per === undefined ? index.ofUnit(unitIndex) + place : index.parts.of(unitIndex, place) + part,
  );
}

function ofOtherUnits(pipeline: PipelineState, unitIndex: number, parents: readonly UnitEntryId[]): string | null {
  const units = pipeline.site.loops[pipeline.site.units[unitIndex]?.loop ?? -1]?.units ?? [];
  for (const other of units) {
    if (other === unitIndex) continue;
    for (const parent of parents) {
      const name = nameOf(pipeline, pipeline.index.ofUnit(other) + unitEntryPlace[parent]);
      if (name !== null) return name;
    }
  }
  return null;
}

/** The alarm, or what it is folded under itself. Only an alarm that is active and told is a first-out; an alert never. */
function nameOf(pipeline: PipelineState, alarm: number): string | null {
  const record = pipeline.book.told(alarm);
  return record?.active === true ? (record.foldedUnder ?? record.alarm) : null;
}
