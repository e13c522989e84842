import type { ServerLine } from '@ebbline/shared/contract/live-feed';
import { hottestOf } from './hottest';
import type { PictureScene } from './scene';
import { unitAt } from './to-loop-line';
import { toFigure } from './to-reading';

/** One server's hoses on its rack's manifolds, by its place in the unit's list of servers. */
export function toServerLine({ pipeline, nowMs }: PictureScene, unit: number, index: number): ServerLine {
  const { servers, branches, plates } = unitAt(pipeline, unit);
  const server = servers[index];
  if (server === undefined) throw new RangeError(`there is no server ${index}; the unit has ${servers.length}`);
  const figure = (slot: number) => toFigure(pipeline, slot, nowMs());
  return {
    id: server.id,
    name: server.name,
    branch: branches[server.branch]?.id ?? null,
    returnTemperature: figure(server.slot.returnTemperature),
    power: figure(server.slot.power),
    fanSpeed: figure(server.slot.fanSpeed),
    ...hottestOf(
      pipeline,
      plates.filter((plate) => plate.server === index),
      nowMs(),
    ),
  };
}
