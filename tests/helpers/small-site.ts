import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { derivedPointIds } from '../../backend/src/evaluation/derive/derived-point-ids';
import { compileSite } from '../../backend/src/evaluation/site/compile-site';
import type { CompiledSite } from '../../backend/src/evaluation/site/compiled-site';
import { keyPath } from '../../backend/src/evaluation/site/site-fault';

const file = new URL('./sites/small-site.yaml', import.meta.url);

/** The small site as plain objects, fresh at each call, for tests that change it before compiling. */
export const smallSiteDocument = (): unknown => parse(readFileSync(file, 'utf8'));

/** Any site document, compiled; throws with every fault where it is refused. */
export function compiledOrThrow(document: unknown): CompiledSite {
  const result = compileSite(document, derivedPointIds);
  if (result.ok) return result.value.site;
  throw new Error(result.fault.map(({ path, message }) => `${keyPath(path)}: ${message}`).join('\n'));
}

/** One hall `north`, units `m1` (one JSON object) and `m2` (a topic a point). */
export const smallSite = (): CompiledSite => compiledOrThrow(smallSiteDocument());

/** Slot of a point of a hall or unit; throws where the site has no such point. */
export function slotOf(site: CompiledSite, holder: string, point: string): number {
  const slot = site.holders.find(({ id }) => id === holder)?.slotOf.get(point);
  if (slot === undefined) throw new Error(`${holder} has no point ${point}`);
  return slot;
}
