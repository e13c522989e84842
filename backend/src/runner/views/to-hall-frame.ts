import type { HallFrame, HallPicture, LoopLine } from '@ebbline/shared/contract/live-feed';
import type { CompiledHall } from '../../evaluation/site/compiled-site';
import { besidesOf, countBeside } from './besides-of';
import { frameBase, pictureBase } from './frame-base';
import { countOr, heldAside } from './held-aside';
import type { PictureScene, Scene } from './scene';
import { sumFigures } from './sum-figures';
import { toLoopLine } from './to-loop-line';
import { permitsOf } from './to-permit';
import { toFigure } from './to-reading';

/** What the Hall screen shows. */
export function toHallFrame(scene: Scene, hall: CompiledHall): Omit<HallFrame, 'sequence'> {
  const beside = besidesOf(scene, hall);
  return { ...toHallPicture(scene, hall), ...(beside.length === 0 ? {} : { beside }), ...frameBase(scene) };
}

/** What it draws, of now or of a past second: the room, its sums, and a line a loop. */
export function toHallPicture(scene: PictureScene, hall: CompiledHall): HallPicture {
  const alarms = scene.alarms();
  const nowMs = scene.nowMs();
  const aside = heldAside(scene);
  const loops = hall.units.map((unit) => toLoopLine(scene, unit, alarms, aside));
  return {
    screen: 'hall',
    hall: hall.id,
    name: hall.name,
    ambientPressure: toFigure(scene.pipeline, hall.slot.ambientPressure, nowMs),
    temperature: toFigure(scene.pipeline, hall.slot.temperature, nowMs),
    dewPoint: toFigure(scene.pipeline, hall.slot.dewPoint, nowMs),
    heatRemoved: sumFigures(loops.map((loop) => loop.heatRemoved)),
    chipPower: sumFigures(loops.map((loop) => loop.chipPower)),
    smallestMargin: smallestMargin(loops),
    loops,
    permits: permitsOf(scene, (unit) => loops.some((loop) => loop.unit === unit)),
    ...countOr('besideSetAside', countBeside(scene, hall, aside)),
    ...pictureBase(scene),
  };
}

function smallestMargin(loops: readonly LoopLine[]): HallFrame['smallestMargin'] {
  let smallest: HallFrame['smallestMargin'] = null;
  for (const { unit, pressureWindow } of loops) {
    const margin = pressureWindow.vacuumMargin;
    if (margin.value === null || margin.quality === 'bad') continue;
    if (smallest === null || margin.value < (smallest.margin.value ?? Infinity)) smallest = { unit, margin };
  }
  return smallest;
}
