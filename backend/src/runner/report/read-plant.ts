import type { LogFigure, Smallest, TopUp } from '@ebbline/shared/contract/report';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import type { CompiledUnit } from '../../evaluation/site/compiled-unit';
import type { HistoryStore } from '../../ports/history-store';
import { bucketFigures } from './bucket-figures';
import type { PlantOfPeriod } from './build-report';
import { fewAtOnce } from './few-at-once';
import { isoOf } from './iso-of';
import { lastValues } from './last-values';
import { lineUpOf, lineUpPoints } from './line-up';
import { readPoint, readPoints, type Read } from './read-points';
import { countedOf, togetherOf, type Counted } from './top-up';

export interface PlantQuery {
  readonly site: CompiledSite;
  readonly hall: string | null;
  readonly fromMs: number;
  /** Above `fromMs`. */
  readonly untilMs: number;
}

export interface PlantParts {
  readonly store: Pick<HistoryStore, 'read' | 'readSeconds'>;
  /** Expanded uncertainty of a point of a unit at about a time; null: not known. */
  readonly uncertaintyAt: (unit: string, point: string, atMs: number) => Promise<number | null>;
}

/** Of more units than these no figures of each are read: they would fill many pages, and history would be busy for long. */
export const mostLogged = 40;
const atOnce = 4;

const margin = 'vacuumMarginWorst';
const reserve = 'vacuumReserve';
/** What a shift log has of each unit, in its order (common practice, no source). */
const logged = [
  ...['supplyTank.pressure', 'separator.pressure', 'supply.pressure', margin, 'drivingPressure'],
  ...['inLeak', reserve, 'supplyTank.level', 'separator.level', 'filter.pressureDrop', 'filterResistance'],
  ...['pump.speed', 'vacuum.speed', 'loop.flow', 'supply.temperature', 'heatRemoved'],
];

/** What history tells of the units of a hall or the site over a period. Throws what the store throws. */
export async function readPlant(
  query: PlantQuery,
  parts: PlantParts,
): Promise<Omit<PlantOfPeriod, 'gaps'> & { readonly leftOut: number }> {
  const { site, hall } = query;
  const halls = site.halls.filter(({ id }) => hall === null || id === hall);
  const units = halls.flatMap((one) => one.units.flatMap((at) => site.units[at] ?? []));
  const wanted = units.length > mostLogged ? [margin, reserve] : logged;
  const ofUnits = await fewAtOnce(units, atOnce, async (unit) => readUnit(query, parts, unit, wanted));
  const ofHalls = await fewAtOnce(halls, atOnce, async ({ id, holder }) =>
    readPoint(query, parts.store, site.holders[holder], 'ambient.pressure').then((read) =>
      read === null ? [] : [figureOf(null, id, 'ambient.pressure', read)],
    ),
  );
  const reads = ofUnits.flatMap(({ unit, reads: all }) => all.map((read) => ({ unit, ...read })));
  return {
    lineUp: ofUnits.map(({ lineUp }) => lineUp),
    smallestMargin: await smallestOf(query, parts, reads, margin),
    smallestReserve: await smallestOf(query, parts, reads, reserve),
    topUp: await topUpOf(query, parts, units),
    log:
      wanted === logged
        ? [
            ...ofHalls.flat(),
            ...reads.map(({ unit, point, read }) => figureOf(unit.id, hallOf(site, unit), point, read)),
          ]
        : [],
    leftOut: wanted === logged ? 0 : units.length,
  };
}

interface UnitRead {
  readonly unit: CompiledUnit;
  readonly point: string;
  readonly read: Read;
}

async function readUnit(query: PlantQuery, parts: PlantParts, unit: CompiledUnit, wanted: readonly string[]) {
  const holder = query.site.holders[unit.holder];
  if (holder === undefined) throw new RangeError(`unit ${unit.id} holds nothing`);
  const reads = await readPoints(query, parts.store, holder, wanted);
  const branches = unit.branches.map(({ id }) => id);
  const values = await lastValues(parts.store, query.site, holder, lineUpPoints(branches), query.untilMs);
  return { unit, reads, lineUp: lineUpOf(unit.id, branches, values) };
}

function figureOf(unit: string | null, hall: string, point: string, { buckets, unitOfMeasure }: Read): LogFigure {
  const { least, mean, most, last, lastAtMs, share } = bucketFigures(buckets);
  const lastAt = lastAtMs === null ? null : isoOf(lastAtMs);
  return { unit, hall, point, unit_of_measure: unitOfMeasure, least, mean, most, last, lastAt, share };
}

/** The smallest among units, where and how sure. */
async function smallestOf(
  query: PlantQuery,
  parts: PlantParts,
  reads: readonly UnitRead[],
  point: string,
): Promise<Smallest | null> {
  const all = reads
    .filter((one) => one.point === point)
    .flatMap(({ unit, read }) => {
      const { least, leastAtMs, share } = bucketFigures(read.buckets);
      return least === null || leastAtMs === null ? [] : [{ unit, read, least, leastAtMs, share }];
    });
  const [first, ...others] = all;
  if (first === undefined) return null;
  const { unit, read, least, leastAtMs, share } = others.reduce((a, b) => (b.least < a.least ? b : a), first);
  const { bucketMs } = read.buckets;
  return {
    ...{ unit: unit.id, point, value: least, unit_of_measure: read.unitOfMeasure, at: isoOf(leastAtMs), share },
    bucketSeconds: bucketMs / 1000,
    where: point === margin ? await highestPlace(query, parts, unit, leastAtMs, leastAtMs + bucketMs) : null,
    expandedUncertainty: await parts.uncertaintyAt(unit.id, point, leastAtMs + bucketMs / 2),
  };
}

/** The wetted place with the highest pressure, running or stopped, within a bucket: that is where the margin was smallest. */
async function highestPlace(
  query: PlantQuery,
  { store }: PlantParts,
  unit: CompiledUnit,
  fromMs: number,
  toMs: number,
): Promise<string | null> {
  const holder = query.site.holders[unit.holder];
  const places = unit.nodes.flatMap(({ id }) =>
    ['pressure', 'pressureStopped'].map((kind) => [id, `node.${id}.${kind}`] as const),
  );
  let [highest, where] = [-Infinity, null as string | null];
  for (const [id, point] of places) {
    const read = await readPoint({ ...query, fromMs, untilMs: toMs }, store, holder, point);
    const most = read === null ? null : bucketFigures(read.buckets).most;
    if (most !== null && most > highest) [highest, where] = [most, id];
  }
  return where;
}

/** Of each loop that has a unit among these, all its counters. */
async function topUpOf(query: PlantQuery, parts: PlantParts, units: readonly CompiledUnit[]): Promise<TopUp[]> {
  const { site } = query;
  const loops = site.loops.filter((loop) => loop.units.some((at) => units.some((unit) => unit === site.units[at])));
  return fewAtOnce(loops, atOnce, async ({ id, name, units: places }) => {
    const ofLoop = places.flatMap((at) => site.units[at] ?? []);
    const counted: (readonly [string, Counted])[] = [];
    for (const unit of ofLoop) {
      const holder = site.holders[unit.holder];
      const slot = holder?.slotOf.get('topUp.volume');
      const read = await readPoint(query, parts.store, holder, 'topUp.volume');
      if (read === null || slot === undefined) continue;
      const { accuracyAbsolute, accuracyNormalAbsolute, accuracyNormalRelative, accuracyRelative } = site.slots;
      const accuracy = {
        absolute: accuracyAbsolute[slot] as number,
        relative: accuracyRelative[slot] as number,
        normalAbsolute: accuracyNormalAbsolute[slot] as number,
        normalRelative: accuracyNormalRelative[slot] as number,
      };
      counted.push([unit.id, countedOf(read.buckets, accuracy)]);
    }
    const { notes, ...sum } = togetherOf(counted);
    const none = counted.length === 0 ? ['No unit of the loop counts top-up water.'] : [];
    return { loop: id, name, units: ofLoop.map((unit) => unit.id), ...sum, notes: [...notes, ...none] };
  });
}

const hallOf = (site: CompiledSite, unit: CompiledUnit): string => site.halls[unit.hall]?.id ?? '';
