import type { Site } from '@ebbline/shared/contract/http-api';
import { catalogue } from '../../evaluation/alarm-rules/catalogue/catalogue';
import { entryIds } from '../../evaluation/alarm-rules/entry-ids';
import type { CompiledSite, CompiledUnit } from '../../evaluation/site/compiled-site';

const entryTitles = Object.fromEntries(entryIds.map((id) => [id, catalogue[id].title]));

/** What there is: halls, units, branches, plates and wetted places. */
export function toSite(site: CompiledSite): Site {
  return {
    id: site.id,
    name: site.name,
    timeZone: site.timeZone,
    altitude: site.altitudeM,
    demo: site.demo,
    halls: site.halls.map(({ id, name, units }) => ({
      id,
      name,
      units: units.map((unit) => site.units[unit]?.id ?? ''),
    })),
    loops: site.loops.map(({ id, name, units, unitsNeeded }) => ({
      id,
      name,
      units: units.map((unit) => site.units[unit]?.id ?? ''),
      unitsNeeded,
    })),
    units: site.units.map((unit) => toSiteUnit(site, unit)),
    entryTitles,
  };
}

function toSiteUnit(site: CompiledSite, unit: CompiledUnit): Site['units'][number] {
  return {
    id: unit.id,
    hall: site.halls[unit.hall]?.id ?? '',
    name: unit.name,
    shape: unit.shape,
    gateway: site.gateways[unit.gateway]?.id ?? '',
    branches: unit.branches.map(({ id, name, ratedFlowM3PerS }) => ({ id, name, ratedFlow: ratedFlowM3PerS })),
    plates: unit.plates.map(({ id, name, branch }) => ({ id, name, branch: unit.branches[branch]?.id ?? null })),
    servers: unit.servers.map(({ id, name, branch }) => ({ id, name, branch: unit.branches[branch]?.id ?? null })),
    tanks: unit.tanks.map(({ id, name }) => ({ id, name })),
    loop: site.loops[unit.loop]?.id ?? '',
    nodes: unit.nodes.map(({ id, name, main, elevationM }) => ({ id, name, main, elevation: elevationM })),
  };
}
