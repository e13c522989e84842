import type { FoundAlarms } from '@ebbline/shared/contract/alarm-modes';
import { modeOf } from '../../evaluation/alarm-lifecycle/mode-facts';
import type { Scene } from './scene';
import { timeText } from './time-text';

/** So many are answered at once: more are no choice for a person. */
const most = 50;

/** Alarms of the site that can be set aside, by words; a name as it stands in lists, `N3:FLOW-3:r5`, is words too. */
export function findableAlarms(scene: Scene, search: string): FoundAlarms {
  const words = search.split(/[\s:]+/).filter((word) => word !== '');
  const { found, more } = scene.pipeline.findAlarms(words, most, scene.nowMs());
  return {
    time: timeText(scene.nowMs()) ?? new Date(0).toISOString(),
    more,
    alarms: found.map(({ record, longestShelvingMs }) => ({
      id: record.alarm,
      unit: record.unit,
      hall: record.hall,
      entry: record.entry,
      title: scene.textsOf(record).title,
      where: record.where,
      mode: modeOf(record),
      active: record.active,
      priority: record.priority,
      longestShelvingMinutes: longestShelvingMs / 60_000,
    })),
  };
}
