import { pointDefinition, pointPattern, pointTable } from '@ebbline/shared/contract/point-table';
import type { PointInFile } from '@ebbline/shared/contract/site-file-points';
import { compilePoint, type CompiledPoint } from './compile-point';
import { compileSource, type CommonSource, type PointSource } from './compile-source';
import type { FillIns } from './fill-in';
import type { FaultList, FaultPath } from './site-fault';

/** A hall or unit as written, ready to have its points compiled. */
export interface HolderInFile {
  readonly kind: 'hall' | 'unit';
  readonly points: Readonly<Record<string, PointInFile>>;
  readonly common: CommonSource;
  readonly branches: readonly string[];
  readonly plates: readonly string[];
  readonly fillIns: FillIns;
  readonly at: (...keys: readonly (string | number)[]) => FaultPath;
}

export interface MeasuredPoint {
  readonly point: CompiledPoint;
  /** Null where its place could not be told (a fault says why). */
  readonly source: PointSource | null;
  /** Where it stands in the site file. */
  readonly at: FaultPath;
  readonly hose: PointInFile['hose'] | null;
}

interface Wanted {
  readonly id: string;
  readonly key: string;
  readonly fillIns: FillIns;
}

/** `branch.*.flow` → one for each branch; other keys stand for themselves. */
function expand(key: string, holder: HolderInFile): readonly Wanted[] {
  const parts = /^(branch|plate)\.([^.]+)\.(.+)$/.exec(key);
  if (parts === null) return [{ id: key, key, fillIns: holder.fillIns }];
  const [, group = '', one = '', rest = ''] = parts;
  const ids = one === '*' ? (group === 'branch' ? holder.branches : holder.plates) : [one];
  return ids.map((id) => ({
    id: `${group}.${id}.${rest}`,
    key,
    fillIns: { ...holder.fillIns, [group]: id },
  }));
}

function idFault(id: string, holder: HolderInFile): string | null {
  const definition = pointDefinition(id);
  if (definition === undefined || definition.holder !== holder.kind) {
    const known = pointTable.filter((row) => row.kind === 'measured' && row.holder === holder.kind);
    return `no measured point of a ${holder.kind} has this id; known are ${known.map((row) => row.id).join(', ')}`;
  }
  if (definition.kind === 'derived') return 'is derived by Ebbline and never measured; take it out';
  const parts = /^(branch|plate)\.([^.]+)\./.exec(id);
  if (parts === null) return null;
  const ids = parts[1] === 'branch' ? holder.branches : holder.plates;
  const one = parts[2] ?? '';
  return ids.includes(one) ? null : `there is no ${parts[1]} "${one}" in this unit; add it or correct the id`;
}

const order = new Map(pointTable.map((row, i) => [row.id, i]));
const rank = (id: string): number => order.get(pointPattern(id)) ?? order.size;

/** A point named by itself wins over `branch.*`; sorted in the order of the point table. */
export function compileHolder(holder: HolderInFile, faults: FaultList): readonly MeasuredPoint[] {
  const wanted = new Map<string, Wanted>();
  const keys = Object.keys(holder.points).sort((a, b) => Number(b.includes('*')) - Number(a.includes('*')));
  for (const key of keys) for (const one of expand(key, holder)) wanted.set(one.id, one);

  const points: MeasuredPoint[] = [];
  for (const { id, key, fillIns } of wanted.values()) {
    const file = holder.points[key];
    if (file === undefined) continue;
    const path = holder.at('points', key);
    const wrong = idFault(id, holder);
    const definition = pointDefinition(id);
    if (wrong !== null || definition === undefined) {
      faults.add(path, wrong ?? 'is not known');
      continue;
    }
    const point = compilePoint(id, file, definition, (at, message) =>
      faults.add(holder.at('points', key, ...at.split('.')), message),
    );
    const source = compileSource(file, holder.common, fillIns, (at, message) =>
      faults.add(at === null ? path : holder.at('points', key, at), message),
    );
    points.push({ point, source, at: path, hose: file.hose ?? null });
  }
  const place = new Map<string, number>();
  [...holder.branches, ...holder.plates].forEach((id, i) => place.set(id, i));
  const within = (id: string): number => place.get(id.split('.')[1] ?? '') ?? -1;
  return points.sort((a, b) => rank(a.point.id) - rank(b.point.id) || within(a.point.id) - within(b.point.id));
}
