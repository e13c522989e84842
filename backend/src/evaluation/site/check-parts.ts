import { checkFittings } from './check-fittings';
import type { MergedUnit } from './merge-templates';
import { siOrNull } from './read-quantities';
import type { FaultList } from './site-fault';
import { partIds, partMaps } from './unit-parts';

/** Share by which the branches' rated flows may add up to more than the unit's before it is said; fewer may be listed. */
const flowTolerance = 0.1;

/** Whether branches, servers, plates and tanks fit together. */
export function checkParts(merged: MergedUnit, faults: FaultList, warnings: FaultList): void {
  checkFittings(merged, faults, warnings);
  checkReferences(merged, faults);
  checkTanks(merged, faults, warnings);
  checkRatedFlows(merged, warnings);
}

function checkReferences({ unit, at }: MergedUnit, faults: FaultList): void {
  const ids = partIds(unit);
  const { server: servers, plate: plates } = partMaps(unit);
  const known = (group: 'branch' | 'server', id: string | undefined, ...keys: readonly string[]): void => {
    if (id !== undefined && !ids[group].includes(id))
      faults.add(at(...keys), `there is no ${group} "${id}" in this unit; add it or correct the id`);
  };
  for (const [id, server] of Object.entries(servers)) known('branch', server?.branch, 'servers', id, 'branch');
  for (const [id, plate] of Object.entries(plates)) {
    known('branch', plate?.branch, 'plates', id, 'branch');
    known('server', plate?.server, 'plates', id, 'server');
    const fed = servers[plate?.server ?? '']?.branch;
    if (fed !== undefined && plate?.branch !== undefined && fed !== plate.branch)
      faults.add(
        at('plates', id, 'branch'),
        `its server "${plate.server ?? ''}" is on branch "${fed}"; a plate is on the branch of its server: correct one of them`,
      );
  }
}

function checkTanks({ unit, at }: MergedUnit, faults: FaultList, warnings: FaultList): void {
  const tanks = Object.entries(partMaps(unit).tank);
  for (const [id, tank] of tanks) {
    const area = siOrNull(tank?.area, 'area');
    if (area !== null && !(area > 0)) faults.add(at('tanks', 'named', id, 'area'), 'expected more than 0');
  }
  if (unit.shape !== 'b') return;
  if (tanks.length === 1)
    faults.add(at('tanks', 'named'), 'alternating tanks are at least two: one fills while another discharges; add it');
  if (tanks.length === 0)
    warnings.add(
      at('shape'),
      'no alternating tank is listed under tanks.named; without them late and failed transfers are not seen',
    );
  if (returnPressures(unit) < 2 || siOrNull(unit.hoseBore, 'length') === null)
    warnings.add(
      at('shape'),
      'with alternating tanks AIR-1 tells an open line by the one rack whose return pressure rises over the others, for change-overs move all else: without return.pressure of two branches and hoseBore it is never raised',
    );
}

/** How many branches have a return pressure, by their own key or by that of all. */
function returnPressures({ branches, points }: MergedUnit['unit']): number {
  const ids = Object.keys(branches ?? {});
  const told = (key: string): boolean => (points?.[key] ?? null) !== null;
  return ids.filter((id) => told(`branch.${id}.return.pressure`) || told('branch.*.return.pressure')).length;
}

function checkRatedFlows({ unit, at }: MergedUnit, warnings: FaultList): void {
  const flows = Object.values(unit.branches ?? {}).map((branch) => siOrNull(branch?.ratedFlow, 'volumeFlow'));
  const rated = siOrNull(unit.ratedFlow, 'volumeFlow');
  if (rated === null || !(rated > 0)) return;
  const sum = flows.reduce<number>((total, flow) => total + (flow ?? 0), 0);
  if (sum / rated - 1 > flowTolerance)
    warnings.add(
      at('branches'),
      `the branches' rated flows are ${Math.round((100 * sum) / rated)} % of ratedFlow together; correct one of them`,
    );
}
