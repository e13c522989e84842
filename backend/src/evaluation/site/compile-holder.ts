import type { PointInFile } from '@ebbline/shared/contract/site-file-points';
import type { CompiledPoint } from './compile-point';
import { compileSource, type CommonSource, type PointSource } from './compile-source';
import type { FillIns, PathReader } from './fill-in';
import type { FaultList, FaultPath } from './site-fault';
import type { PointsInFile, WantedPoint, WantedPointsCache } from './wanted-points';

/** A hall or unit as written, ready to have its points compiled. */
export interface HolderInFile extends PointsInFile {
  readonly common: CommonSource;
  readonly fillIns: FillIns;
}

/** What holders of one site file have in common. */
export interface HolderCaches {
  readonly wanted: WantedPointsCache;
  readonly paths: PathReader;
}

export interface MeasuredPoint {
  readonly point: CompiledPoint;
  /** Null where its place could not be told (a fault says why). */
  readonly source: PointSource | null;
  /** Where it stands in the site file. */
  readonly at: () => FaultPath;
  readonly hose: PointInFile['hose'] | null;
}

/** Every measured point of a hall or unit with its place in the payloads, in the order of the point table. */
export function compileHolder(
  holder: HolderInFile,
  { wanted: cache, paths }: HolderCaches,
  faults: FaultList,
): readonly MeasuredPoint[] {
  const fillIns = new Map<string, FillIns>();
  return cache.of(holder, faults).map((wanted) => {
    const { key, file, point } = wanted;
    const at = (): FaultPath => holder.at('points', key);
    const source = compileSource(file, holder.common, fillInsOf(wanted, holder, fillIns), paths, (inner, message) =>
      faults.add(inner === null ? at() : holder.at('points', key, inner), message),
    );
    return { point, source, at, hose: file.hose ?? null };
  });
}

/** With `{branch}`, `{server}`, `{plate}` or `{tank}` where the key stands for one of them; made once for each. */
function fillInsOf({ part }: WantedPoint, { fillIns }: HolderInFile, known: Map<string, FillIns>): FillIns {
  if (part === null) return fillIns;
  const name = `${part.group}.${part.id}`;
  const found = known.get(name) ?? { ...fillIns, [part.group]: part.id };
  known.set(name, found);
  return found;
}
