import { pointTable, type QuantityKind } from '@ebbline/shared/contract/point-table';
import { leastReAlarmSeconds } from '@ebbline/shared/contract/alarm-settings';
import type { EntryInFile, LimitsInFile } from '@ebbline/shared/contract/site-file-limits';
import { parseQuantity } from '@ebbline/shared/contract/site-file-quantity';
import { fail, type Result } from '@ebbline/shared/errors/result';
import type { EntryLimits } from './compiled-site';
import type { LimitsAt } from './compiled-unit';
import type { FaultList, FaultPath } from './site-fault';

/** Catalogue entries by id, with the quantity of their limit (null: the entry has no limit). */
export type CatalogueEntries = ReadonlyMap<string, QuantityKind | null>;

/** Entries that hold a value within a band: for these a site may set `low` as well. */
export const entriesWithBand: ReadonlySet<string> = new Set(['CHEM-1', 'CHEM-2', 'CHEM-3', 'CHEM-4', 'CHEM-5']);

export interface LimitLevel {
  readonly limits: LimitsInFile | undefined;
  readonly at: (...keys: readonly string[]) => FaultPath;
}

/** Differences before temperatures: a limit of `2 K` is a difference. */
const anyQuantity: readonly QuantityKind[] = [
  'temperatureDifference',
  ...new Set(pointTable.map((row) => row.quantity).filter((kind) => kind !== 'temperatureDifference')),
];

/** A text → SI by the quantity of the entry, or where that is not known by whatever quantity has such a unit. */
function toSi(text: string, quantity: QuantityKind | undefined, difference: boolean): Result<number, string> {
  const isFahrenheit = /(?:°|deg)F\s*$/.test(text);
  const first: readonly QuantityKind[] =
    quantity !== undefined
      ? [difference && quantity === 'temperature' ? 'temperatureDifference' : quantity]
      : isFahrenheit && !difference
        ? ['temperature']
        : anyQuantity;
  for (const kind of first) {
    const parsed = parseQuantity(text, kind);
    if (parsed.ok) return parsed;
  }
  const [kind = 'ratio'] = first;
  return quantity === undefined
    ? fail('expected a number and a unit of measure that Ebbline knows, such as 5 kPa, 2 K or 50 %')
    : parseQuantity(text, kind);
}

type Changeable = { -readonly [Key in keyof EntryLimits]: EntryLimits[Key] };

/** One level as the file has it: an entry with what it changes, or null where it goes back to the catalogue's defaults. */
export function compileLevel(
  { limits, at }: LimitLevel,
  entries: CatalogueEntries | null,
  faults: FaultList,
): LimitsAt {
  const compiled = new Map<string, EntryLimits | null>();
  for (const [id, written] of Object.entries(limits ?? {})) {
    if (entries !== null && !entries.has(id)) {
      faults.add(at(id), `the catalogue has no entry "${id}"; known are ${[...entries.keys()].join(', ')}`);
      continue;
    }
    compiled.set(id, written === null ? null : compileEntry(id, written, at, entries, faults));
  }
  return compiled;
}

function compileEntry(
  id: string,
  written: EntryInFile,
  at: LimitLevel['at'],
  entries: CatalogueEntries | null,
  faults: FaultList,
): EntryLimits {
  const quantity = entries?.get(id) ?? undefined;
  const compiled: Changeable = {};
  const number = (key: 'limit' | 'low' | 'deadband'): void => {
    const text = written[key];
    if (text === undefined) return;
    if (entries?.get(id) === null) {
      faults.add(at(id, key), `${id} has no limit to change; take this key out`);
      return;
    }
    if (key === 'low' && !entriesWithBand.has(id)) {
      faults.add(at(id, key), `${id} has no band; set its limit, and take this key out`);
      return;
    }
    const parsed = toSi(text, quantity, key === 'deadband');
    if (!parsed.ok) faults.add(at(id, key), parsed.fault);
    else if (key === 'deadband' && parsed.value < 0) faults.add(at(id, key), 'expected 0 or more');
    else compiled[key] = parsed.value;
  };
  number('limit');
  number('low');
  number('deadband');
  for (const [key, target] of [
    ['onDelay', 'onDelayMs'],
    ['offDelay', 'offDelayMs'],
  ] as const) {
    const text = written[key];
    const parsed = text === undefined ? null : parseQuantity(text, 'duration');
    if (parsed?.ok === true && parsed.value >= 0) compiled[target] = parsed.value * 1000;
    else if (parsed !== null) faults.add(at(id, key), 'expected 0 s or more');
  }
  const again = written.reAlarmAfter === undefined ? null : parseQuantity(written.reAlarmAfter, 'duration');
  if (again?.ok === true && again.value >= leastReAlarmSeconds) compiled.reAlarmAfterMs = again.value * 1000;
  else if (again !== null) faults.add(at(id, 'reAlarmAfter'), `expected ${leastReAlarmSeconds} s or more`);
  if (written.enabled !== undefined) compiled.enabled = written.enabled;
  if (written.action !== undefined) compiled.action = written.action;
  return compiled;
}

/** Site, then hall, then unit: the nearest wins, key by key; null goes back to the catalogue's defaults. */
export function mergeLevels(levels: readonly (LimitsAt | undefined)[]): Map<string, EntryLimits> {
  const merged = new Map<string, EntryLimits>();
  for (const level of levels)
    for (const [id, own] of level ?? []) {
      if (own === null) merged.delete(id);
      else merged.set(id, { ...merged.get(id), ...own });
    }
  return merged;
}

/** Limits with the bands of the water beneath: what a limit states itself wins. */
export function overBands(bands: LimitsAt, limits: ReadonlyMap<string, EntryLimits>): Map<string, EntryLimits> {
  const merged = new Map(limits);
  for (const [id, band] of bands) if (band !== null) merged.set(id, { ...band, ...limits.get(id) });
  return merged;
}
