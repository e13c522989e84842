import type { Priority } from '@ebbline/shared/contract/alarm';
import type { LoopLine } from '@ebbline/shared/contract/live-feed';
import { higher } from '../../evaluation/alarm-rules/priority';
import type { AlarmRecord } from '../../evaluation/pipeline/outputs';
import type { CompiledUnit } from '../../evaluation/site/compiled-site';
import { slotAgeS } from '../../evaluation/slots/slot-age';
import { countOr } from './held-aside';
import type { PictureScene, ShownAlarm, ShownPipeline } from './scene';
import { finiteOrNull } from './time-text';
import { byNeed, toAlarm } from './to-alarm';
import { toFigure } from './to-reading';

/**
 * One loop of a hall: its window, its heat, and the alarm that most needs a person.
 * @param aside what is set aside while its condition holds, of every unit
 */
export function toLoopLine(
  scene: PictureScene,
  unit: number,
  alarms: readonly ShownAlarm[],
  aside: readonly AlarmRecord[],
): LoopLine {
  const { pipeline } = scene;
  const { id, name } = unitAt(pipeline, unit);
  const nowMs = scene.nowMs();
  const mode = pipeline.modeOf(unit);
  const own = alarms.filter(({ record }) => record.unit === id).sort(byNeed);
  const permits = pipeline.permits().filter((permit) => permit.unit === id);
  const figure = (point: string) => toFigure(pipeline, slotOf(pipeline, unit, point), nowMs);
  return {
    unit: id,
    name,
    mode: mode.mode,
    modeKnown: mode.known,
    age: ageOfUnit(pipeline, unit, nowMs),
    pressureWindow: pipeline.pressureWindow(unit, nowMs),
    heatRemoved: figure('heatRemoved'),
    chipPower: figure('chipPower'),
    drivingPressure: figure('drivingPressure'),
    vacuumReserve: figure('vacuumReserve'),
    openingsCarried: figure('openingsCarried'),
    openingsCarriedAll: figure('openingsCarriedAll'),
    openPermits: permits.length,
    ventedNotProtected: mode.mode === 'vented' && permits.length > 0,
    worst: own[0] === undefined ? null : worstOf(scene, own[0]),
    moreAlarms: Math.max(0, own.length - 1),
    ...gapsOf(own),
    ...countOr('setAsideHolding', aside.filter((record) => record.unit === id).length),
  };
}

/** What the alarms of the margins are worth, whichever of the unit's alarms a person is called by. */
function gapsOf(own: readonly ShownAlarm[]): Pick<LoopLine, 'gaps'> {
  const [left, right] = (['BOIL-', 'MARGIN-'] as const).map((family) => {
    const found = own.filter(({ record }) => record.active && record.entry.startsWith(family));
    return found.reduce<Priority | null>((worst, { record }) => higher(worst, record.priority), null);
  });
  return left === null && right === null ? {} : { gaps: { left: left ?? null, right: right ?? null } };
}

/** A unit by its index; an index that is not there is a mistake of the caller. */
export function unitAt({ site }: ShownPipeline, unit: number): CompiledUnit {
  const found = site.units[unit];
  if (found === undefined) throw new RangeError(`there is no unit ${unit}; the site has ${site.units.length}`);
  return found;
}

/** The slot of a unit's own point, −1 where it has none. */
export const slotOf = (pipeline: ShownPipeline, unit: number, point: string): number =>
  pipeline.site.holders[unitAt(pipeline, unit).holder]?.slotOf.get(point) ?? -1;

/** Seconds since the newest measured sample of the unit. */
export function ageOfUnit(pipeline: ShownPipeline, unit: number, nowMs: number): number | null {
  const holder = pipeline.site.holders[unitAt(pipeline, unit).holder];
  if (holder === undefined) return null;
  let youngest = Number.NaN;
  for (let slot = holder.firstSlot; slot < holder.firstSlot + holder.slotCount; slot++) {
    if (pipeline.site.slots.measured[slot] !== 1) continue;
    const age = slotAgeS(pipeline.state, slot, nowMs);
    if (!(age >= youngest) && !Number.isNaN(age)) youngest = age;
  }
  return finiteOrNull(youngest);
}

/** Whether any measured point of the unit has ever come. */
export function isHeard({ site, state }: ShownPipeline, unit: number): boolean {
  const { firstSlot, slotCount } = site.holders[site.units[unit]?.holder ?? -1] ?? { firstSlot: 0, slotCount: 0 };
  for (let slot = firstSlot; slot < firstSlot + slotCount; slot++)
    if (site.slots.measured[slot] === 1 && !Number.isNaN(slotAgeS(state, slot, 0))) return true;
  return false;
}

function worstOf(scene: PictureScene, shown: ShownAlarm): LoopLine['worst'] {
  const alarm = toAlarm(shown, scene.textsOf(shown.record));
  const { id, entry, title, priority, state, where, action, since, detail } = alarm;
  return { id, entry, title, priority, state, where, action, since, detail };
}
