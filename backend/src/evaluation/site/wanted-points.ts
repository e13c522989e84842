import {
  partGroups,
  pointDefinition,
  pointPattern,
  pointTable,
  splitPoint,
  type PartGroup,
} from '@ebbline/shared/contract/point-table';
import type { PointInFile } from '@ebbline/shared/contract/site-file-points';
import { compilePoint, type CompiledPoint } from './compile-point';
import type { FaultList, FaultPath } from './site-fault';
import type { PartIds } from './unit-parts';

/** The points of a hall or unit as written. */
export interface PointsInFile {
  readonly kind: 'hall' | 'unit';
  readonly points: Readonly<Record<string, PointInFile>>;
  readonly parts: PartIds;
  readonly at: (...keys: readonly (string | number)[]) => FaultPath;
}

/** One point that a holder has. */
export interface WantedPoint {
  readonly point: CompiledPoint;
  readonly file: PointInFile;
  /** Its key in the file: `branch.*.flow` for that of every branch. */
  readonly key: string;
  /** What `{branch}`, `{server}`, `{plate}` or `{tank}` stands for under such a key. */
  readonly part: { readonly group: PartGroup; readonly id: string } | null;
}

type Wish = Omit<WantedPoint, 'point' | 'file'> & { readonly id: string };

/** `branch.*.flow` → one for each branch; other keys stand for themselves. */
function expand(key: string, holder: PointsInFile): readonly Wish[] {
  const parts = splitPoint(key);
  if (parts === null) return [{ id: key, key, part: null }];
  const { group, rest } = parts;
  const ids = parts.id === '*' ? holder.parts[group] : [parts.id];
  return ids.map((id) => ({ id: `${group}.${id}.${rest}`, key, part: { group, id } }));
}

function idFault(id: string, holder: PointsInFile): string | null {
  const definition = pointDefinition(id);
  if (definition === undefined || definition.holder !== holder.kind) {
    const known = pointTable.filter(
      (row) => row.kind === 'measured' && row.holder === holder.kind && !row.id.endsWith('.hand'),
    );
    return `no measured point of a ${holder.kind} has this id; known are ${known.map((row) => row.id).join(', ')}`;
  }
  if (id.endsWith('.hand')) return 'is typed by people; take it out, and give `due` of that parameter under water';
  if (definition.kind === 'derived') return 'is derived by Ebbline and never measured; take it out';
  const part = splitPoint(id);
  if (part === null || holder.parts[part.group].includes(part.id)) return null;
  return `there is no ${part.group} "${part.id}" in this unit; add it or correct the id`;
}

const order = new Map(pointTable.map((row, i) => [row.id, i]));
const rank = (id: string): number => order.get(pointPattern(id)) ?? order.size;

/** A point named by itself wins over `branch.*`; sorted in the order of the point table. */
export function wantedPoints(holder: PointsInFile, faults: FaultList): readonly WantedPoint[] {
  const wishes = new Map<string, Wish>();
  const keys = Object.keys(holder.points).sort((a, b) => Number(b.includes('*')) - Number(a.includes('*')));
  for (const key of keys) for (const one of expand(key, holder)) wishes.set(one.id, one);

  const points: WantedPoint[] = [];
  for (const { id, key, part } of wishes.values()) {
    const file = holder.points[key];
    if (file === undefined) continue;
    const wrong = idFault(id, holder);
    const definition = pointDefinition(id);
    if (wrong !== null || definition === undefined) {
      faults.add(holder.at('points', key), wrong ?? 'is not known');
      continue;
    }
    const point = compilePoint(id, file, definition, (at, message) =>
      faults.add(holder.at('points', key, ...at.split('.')), message),
    );
    points.push({ point, file, key, part });
  }
  const place = new Map<string, number>();
  for (const group of partGroups) holder.parts[group].forEach((id, i) => place.set(`${group}.${id}`, i));
  const within = ({ part }: WantedPoint): number =>
    part === null ? -1 : (place.get(`${part.group}.${part.id}`) ?? -1);
  return points.sort((a, b) => rank(a.point.id) - rank(b.point.id) || within(a) - within(b));
}

interface Kept {
  readonly parts: string;
  readonly points: readonly WantedPoint[];
}

/** Remembers the points of a template, which thousands of units may share; what has a fault is not kept. */
export class WantedPointsCache {
  private readonly kept = new WeakMap<object, Kept>();

  of(holder: PointsInFile, faults: FaultList): readonly WantedPoint[] {
    const parts = [holder.kind, ...partGroups.flatMap((group) => ['', ...holder.parts[group]])].join('\u0000');
    const kept = this.kept.get(holder.points);
    if (kept?.parts === parts) return kept.points;
    const before = faults.size;
    const points = wantedPoints(holder, faults);
    if (faults.size === before) this.kept.set(holder.points, { parts, points });
    return points;
  }
}
