import type { LoopFrame, LoopPicture } from '@ebbline/shared/contract/live-feed';
import { ownerOf } from './besides-of';
import { frameBase, pictureBase } from './frame-base';
import { countOr, heldAside } from './held-aside';
import type { PictureScene, Scene } from './scene';
import { alarmsInOrder } from './to-alarm';
import { toLoopLine, unitAt } from './to-loop-line';
import { readingsOf } from './readings-of';
import { alertsOf } from './to-alert';
import { permitsOf } from './to-permit';
import { toBranchShare } from './to-branch-share';
import { toServerLine } from './to-server-line';

/** What the Loop screen shows of one unit. */
export const toLoopFrame = (scene: Scene, unit: number): Omit<LoopFrame, 'sequence'> => ({
  ...toLoopPicture(scene, unit),
  ...frameBase(scene),
});

/** What it draws, of now or of a past second. */
export function toLoopPicture(scene: PictureScene, unit: number): LoopPicture {
  const { pipeline } = scene;
  const { id, hall, loop, branches, servers } = unitAt(pipeline, unit);
  // What is of a gateway or a loop of several units is of each of them: without it its silence would say nothing here.
  const reaching = [...pipeline.site.gateways, ...pipeline.site.loops].filter(({ units }) => units.includes(unit));
  const owners = new Set(reaching.map((one) => one.id));
  const isOfIt = (of: string | null, owner: string): boolean => of === null && owners.has(owner);
  const aside = heldAside(scene);
  const beside = aside.filter((record) => isOfIt(record.unit, ownerOf(record)));
  return {
    screen: 'loop',
    unit: id,
    hall: pipeline.site.halls[hall]?.id ?? '',
    line: toLoopLine(scene, unit, scene.alarms(), aside),
    points: readingsOf(pipeline, unit, scene.nowMs()),
    path: pipeline.path(unit),
    branches: branches.map((branch, i) => toBranchShare(scene, unit, branch, i)),
    servers: servers.map((_, i) => toServerLine(scene, unit, i)),
    loop: toLoop(scene, loop),
    permits: permitsOf(scene, (concerned) => concerned === id),
    alerts: alertsOf(scene, (concerned) => concerned === id),
    alarms: alarmsInOrder(scene).filter(
      (alarm) => alarm.unit === id || isOfIt(alarm.unit, ownerOf({ ...alarm, alarm: alarm.id })),
    ),
    ...countOr('besideSetAside', beside.length),
    ...pictureBase(scene),
  };
}

function toLoop({ pipeline: { site } }: PictureScene, index: number): LoopFrame['loop'] {
  const loop = site.loops[index];
  return {
    id: loop?.id ?? '',
    name: loop?.name ?? '',
    units: loop?.units.map((unit) => site.units[unit]?.id ?? '') ?? [],
    unitsNeeded: loop?.unitsNeeded ?? 1,
  };
}
