import type { UnitInFile } from '@ebbline/shared/contract/site-file-unit';
import type { CompiledBranch, CompiledPlate, CompiledServer, CompiledTank, FanPath } from './compiled-unit';
import { chipOf, manifoldAreaOf } from './compile-pipes';
import { branchLossOf } from './compile-records';
import { siOr, siOrNull } from './read-quantities';
import { partIds, partMaps, placesOf } from './unit-parts';

export interface CompiledParts {
  readonly branches: readonly CompiledBranch[];
  readonly servers: readonly CompiledServer[];
  readonly plates: readonly CompiledPlate[];
  readonly tanks: readonly CompiledTank[];
}

type SlotOf = (point: string) => number;

const indexIn = (ids: readonly string[], id: string | undefined): number => (id === undefined ? -1 : ids.indexOf(id));

/** Branches, servers, plates and tanks of a unit with their slots; what does not fit together is checked elsewhere. */
export function compileParts(unit: UnitInFile, fanPath: FanPath | null, slot: SlotOf): CompiledParts {
  const ids = partIds(unit);
  const maps = partMaps(unit);
  const { first } = placesOf(unit);
  const servers = ids.server.map((id, i): CompiledServer => {
    const server = maps.server[id];
    return {
      id,
      name: server?.name ?? id,
      branch: indexIn(ids.branch, server?.branch),
      place: first.server + i,
      slot: {
        returnTemperature: slot(`server.${id}.return.temperature`),
        power: slot(`server.${id}.power`),
        fanSpeed: slot(`server.${id}.fanSpeed`),
      },
    };
  });
  const plates = ids.plate.map((id, i): CompiledPlate => {
    const plate = maps.plate[id];
    const server = indexIn(ids.server, plate?.server);
    return {
      id,
      name: plate?.name ?? id,
      server,
      branch: plate?.branch === undefined ? (servers[server]?.branch ?? -1) : indexIn(ids.branch, plate.branch),
      place: first.plate + i,
      elevationM: siOrNull(plate?.elevation, 'length'),
      fanPath: plate?.fans === false ? null : fanPath,
      ...chipOf(plate),
      slot: { temperature: slot(`plate.${id}.temperature`), power: slot(`plate.${id}.power`) },
    };
  });
  const tanks = ids.tank.map((id, i): CompiledTank => ({
    id,
    name: maps.tank[id]?.name ?? id,
    areaM2: siOrNull(maps.tank[id]?.area, 'area'),
    place: first.tank + i,
    slot: {
      level: slot(`tank.${id}.level`),
      pressure: slot(`tank.${id}.pressure`),
      filling: slot(`tank.${id}.filling`),
    },
  }));
  const branches = ids.branch.map((id, i) => compileBranch(unit, id, first.branch + i, slot));
  return { branches, servers, plates, tanks };
}

function compileBranch(unit: UnitInFile, id: string, place: number, slot: SlotOf): CompiledBranch {
  const own = unit.branches?.[id] ?? {};
  const shared = unit.fittings ?? {};
  const ratedFlowM3PerS = siOrNull(own.ratedFlow, 'volumeFlow');
  const bore = (key: 'mainBore' | 'restrictorBore' | 'outletBore'): number | null =>
    siOrNull(own[key] ?? shared[key], 'length');
  return {
    id,
    name: own.name ?? id,
    ratedFlowM3PerS,
    place,
    mainBoreM: bore('mainBore'),
    ...manifoldAreaOf(unit, id),
    ...branchLossOf(unit, id, ratedFlowM3PerS),
    fittings: {
      restrictorBoreM: bore('restrictorBore'),
      outletBoreM: bore('outletBore'),
      inletCheckValve: own.checkValve ?? shared.checkValve ?? false,
    },
    slot: {
      flow: slot(`branch.${id}.flow`),
      returnTemperature: slot(`branch.${id}.return.temperature`),
      returnPressure: slot(`branch.${id}.return.pressure`),
      power: slot(`branch.${id}.power`),
      isolated: slot(`branch.${id}.isolated`),
      waterFound: slot(`branch.${id}.water.found`),
    },
  };
}

/** Fans of the unit's servers, or null. */
export function compileFanPath({ fanPath }: UnitInFile): FanPath | null {
  return fanPath?.resistance === undefined
    ? null
    : { resistanceKPerW: siOr(fanPath.resistance, 'thermalResistance', Number.NaN) };
}
