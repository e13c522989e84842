import { checkSiteFile, type ShapeFault } from '@ebbline/shared/contract/site-file-check';
import type { SiteFile } from '@ebbline/shared/contract/site-file';
import type { FaultPath, SiteFault } from './site-fault';

/** Deep copy of plain data. */
function copy(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(copy);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, copy(inner)]));
}

function take(document: unknown, path: FaultPath): void {
  let parent: unknown = document;
  for (const part of path.slice(0, -1)) {
    if (typeof parent !== 'object' || parent === null) return;
    parent = (parent as Record<string | number, unknown>)[part];
  }
  const last = path.at(-1);
  if (typeof parent !== 'object' || parent === null || last === undefined) return;
  Reflect.deleteProperty(parent, last);
}

/** Stands in for what is missing of the site's head, so that the rest can be checked. */
const standIn: Readonly<Record<string, string>> = { id: 'site', name: 'site', timeZone: 'UTC', altitude: '0 m' };

function mendHead(document: unknown, key: unknown): void {
  if (typeof document !== 'object' || document === null) return;
  const root = document as Record<string, unknown>;
  if (typeof root['site'] !== 'object' || root['site'] === null || typeof key !== 'string')
    root['site'] = { ...standIn };
  else root['site'] = { ...root['site'], [key]: standIn[key] };
}

/**
 * The document without the parts that have the wrong shape, so that the other checks can run on the rest
 * and a person sees all faults at one go. Where a needed part itself is missing or misshapen its holder (the
 * unit, the hall) is taken out. Null where nothing is left to check: no halls or no units.
 */
export function withoutFaulty(document: unknown, faults: readonly ShapeFault[]): SiteFile | null {
  const rest = copy(document);
  let left = faults;
  for (let round = 0; round < 6; round += 1) {
    for (const { path } of left) {
      take(rest, round === 0 ? path : path.slice(0, path[0] === 'site' ? path.length : -1));
      if (round > 0 && path[0] === 'site') mendHead(rest, path[1]);
    }
    const again = checkSiteFile(rest);
    if (again.ok) return again.value;
    left = again.fault;
  }
  return null;
}

const within = (path: FaultPath, other: FaultPath): boolean =>
  other.every((part, i) => String(part) === String(path[i]));

/** A template's key stands for that key of any unit. */
const inUnit = (path: FaultPath): FaultPath => (path[0] === 'templates' || path[0] === 'units' ? path.slice(2) : path);

const overlap = (path: FaultPath, other: FaultPath): boolean => within(path, other) || within(other, path);

/** Leaves out faults that are only there because a misshapen part was taken away. */
export function siteSideFaults(further: readonly SiteFault[], shape: readonly ShapeFault[]): readonly SiteFault[] {
  return further.filter(
    ({ path }) =>
      !shape.some(
        (fault) =>
          overlap(path, fault.path) ||
          (fault.path[0] === 'templates' && path[0] === 'units' && overlap(inUnit(path), inUnit(fault.path))),
      ),
  );
}
