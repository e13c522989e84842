import type { BesideAlarm } from '@ebbline/shared/contract/live-feed';
import type { CompiledHall } from '../../evaluation/site/compiled-site';
import type { PictureScene, ShownAlarm } from './scene';
import { byNeed, toAlarm } from './to-alarm';
import { isCalling } from './to-calling';

/**
 * The standing alarms that no line of a hall could show, as they are of no single unit: those of the hall itself, of a loop
 * or gateway with a unit in it, and of the program; of other halls those that call. Worst first, acknowledged ones too.
 */
export function besidesOf(scene: PictureScene, hall: CompiledHall): readonly BesideAlarm[] {
  const { gateways, loops } = scene.pipeline.site;
  const reaching = [...gateways, ...loops].filter(({ units }) => units.some((unit) => hall.units.includes(unit)));
  const owners = new Set(reaching.map(({ id }) => id));
  const isHere = ({ record }: ShownAlarm): boolean =>
    record.hall === null || record.hall === hall.id || owners.has(ownerOf(record));
  return scene
    .alarms()
    .filter((shown) => shown.record.unit === null && (isHere(shown) || isCalling(shown)))
    .sort(byNeed)
    .map((shown) => {
      const { hall: recorded, ...alarm } = toAlarm(shown, scene.textsOf(shown.record));
      const { id, title, priority, state, where, since, acknowledgedBy } = alarm;
      // One of a gateway or a loop names the hall of its first unit, and is here nevertheless.
      const of = recorded !== null && isHere(shown) ? hall.id : recorded;
      return { id, hall: of, title, priority, state, where, since, acknowledgedBy };
    });
}

/** An alarm's id begins with the unit, loop, hall or gateway that it is of. */
export const ownerOf = ({ alarm, entry }: Pick<ShownAlarm['record'], 'alarm' | 'entry'>): string =>
  alarm.slice(0, alarm.indexOf(`:${entry}`));
