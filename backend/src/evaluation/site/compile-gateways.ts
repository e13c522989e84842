import type { SiteFile } from '@ebbline/shared/contract/site-file';
import type { StatusSource } from './compile-topics';
import { fillIn, pathKeys } from './fill-in';
import type { MergedUnit } from './merge-templates';
import { topicFault } from './topic-check';
import type { FaultList } from './site-fault';

/** Gateways in order: those of the file, then each unit that names none as its own. */
export interface GatewayPlan {
  readonly ids: readonly string[];
  readonly ofUnit: readonly number[];
  readonly statuses: readonly StatusSource[];
}

export function planGateways(file: SiteFile, units: readonly MergedUnit[], faults: FaultList): GatewayPlan {
  const ids = Object.keys(file.gateways ?? {});
  const index = new Map(ids.map((id, i) => [id, i]));
  const ofUnit = units.map(({ id, unit, at }) => {
    const name = unit.gateway ?? id;
    const known = index.get(name);
    if (known !== undefined) return known;
    if (unit.gateway !== undefined)
      faults.add(at('gateway'), `there is no gateway "${name}"; give it under gateways or correct the id`);
    index.set(name, ids.length);
    ids.push(name);
    return ids.length - 1;
  });
  const statuses = Object.entries(file.gateways ?? {}).flatMap(([id, { status }], gateway): StatusSource[] => {
    if (status === undefined) return [];
    const at = ['gateways', id, 'status', 'topic'];
    const fillIns = { site: file.site.id, gateway: id };
    const { text: topic, unknown } = fillIn(status.topic, fillIns);
    const wrong =
      unknown.length > 0
        ? `{${unknown.join('}, {')}} means nothing here; known are {site}, {gateway}`
        : topicFault(topic);
    if (wrong !== null) {
      faults.add(at, wrong);
      return [];
    }
    const path = status.path === undefined ? null : pathKeys(status.path, fillIns);
    return [{ topic, gateway, online: status.online, path, at }];
  });
  return { ids, ofUnit, statuses };
}
