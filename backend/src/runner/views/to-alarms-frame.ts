import type { AlarmsFrame } from '@ebbline/shared/contract/live-feed';
import { frameBase } from './frame-base';
import { countOr, heldAside } from './held-aside';
import type { Scene } from './scene';
import { alarmsInOrder } from './to-alarm';
import { alertsOf } from './to-alert';
import { permitsOf } from './to-permit';
import { isHeard } from './to-loop-line';
import { setAsideCount } from './to-set-aside';

/** What the Alarms screen shows: standing alarms, and beside them alerts and permits. */
export const toAlarmsFrame = (scene: Scene): Omit<AlarmsFrame, 'sequence'> => ({
  screen: 'alarms',
  alarms: alarmsInOrder(scene),
  alerts: alertsOf(scene, () => true),
  permits: permitsOf(scene, () => true),
  setAside: setAsideCount(scene),
  ...countOr('setAsideHolding', heldAside(scene).length),
  unheard: scene.pipeline.site.units.filter((_, unit) => !isHeard(scene.pipeline, unit)).length,
  flood: scene.flood?.() ?? null,
  ...frameBase(scene),
});
