import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';

/** By a path, not an address: tests of the screens read it too, and there an address is a web page's. */
const demoSite = join(import.meta.dirname, '../../simulator/demo-site/site.yaml');

interface SiteFile extends Record<string, unknown> {
  readonly units: Readonly<Record<string, { readonly hall: string; readonly gateway?: string }>>;
  readonly halls: Readonly<Record<string, unknown>>;
  readonly gateways: Readonly<Record<string, unknown>>;
  readonly loops?: Readonly<Record<string, { readonly units: readonly string[] }>>;
}

/** The demo site's file with only these units, their halls, gateways and whole loops: nobody else is silent. */
export function siteOfUnits(ids: readonly string[]): Record<string, unknown> {
  const site = parse(readFileSync(demoSite, 'utf8')) as SiteFile;
  const units = pick(site.units, ids);
  const values = Object.values(units);
  return {
    ...site,
    units,
    halls: pick(
      site.halls,
      values.map(({ hall }) => hall),
    ),
    gateways: pick(
      site.gateways,
      values.flatMap(({ gateway }) => gateway ?? []),
    ),
    loops: Object.fromEntries(
      Object.entries(site.loops ?? {}).filter(([, loop]) => loop.units.every((id) => ids.includes(id))),
    ),
  };
}

const pick = <Value>(all: Readonly<Record<string, Value>>, ids: readonly string[]): Record<string, Value> =>
  Object.fromEntries(Object.entries(all).filter(([id]) => ids.includes(id)));
