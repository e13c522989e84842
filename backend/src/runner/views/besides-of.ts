import type { BesideAlarm } from '@ebbline/shared/contract/live-feed';
import type { AlarmRecord } from '../../evaluation/pipeline/outputs';
import type { CompiledHall } from '../../evaluation/site/compiled-site';
import type { PictureScene, ShownAlarm } from './scene';
import { byNeed, toAlarm } from './to-alarm';
import { isCalling } from './to-calling';

/**
 * The standing alarms that no line of a hall could show, as they are of no single unit: those of the hall itself, of a loop
 * or gateway with a unit in it, and of the program; of other halls those that call. Worst first, acknowledged ones too.
 */
export function besidesOf(scene: PictureScene, hall: CompiledHall): readonly BesideAlarm[] {
  const isOfHall = ofHall(scene, hall);
  const isHere = ({ record }: ShownAlarm): boolean => isOfHall(record);
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

/** How many of these are of no single unit, and yet of this hall, by the same reckoning. */
export function countBeside(scene: PictureScene, hall: CompiledHall, records: readonly AlarmRecord[]): number {
  if (records.length === 0) return 0;
  const isOfHall = ofHall(scene, hall);
  return records.filter((record) => record.unit === null && isOfHall(record)).length;
}

function ofHall({ pipeline }: PictureScene, hall: CompiledHall): (record: AlarmRecord) => boolean {
  const { gateways, loops } = pipeline.site;
  const reaching = [...gateways, ...loops].filter(({ units }) => units.some((unit) => hall.units.includes(unit)));
  const owners = new Set(reaching.map(({ id }) => id));
  return (record) => record.hall === null || record.hall === hall.id || owners.has(ownerOf(record));
}

/** An alarm's id begins with the unit, loop, hall or gateway that it is of. */
export const ownerOf = ({ alarm, entry }: Pick<ShownAlarm['record'], 'alarm' | 'entry'>): string =>
  alarm.slice(0, alarm.indexOf(`:${entry}`));
