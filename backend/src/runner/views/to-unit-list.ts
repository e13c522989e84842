import type { UnitList } from '@ebbline/shared/contract/http-api';
import type { Scene } from './scene';
import { ageOfUnit } from './to-loop-line';

/** Every unit in a line: its mode, its worst alarm, its age. */
export function toUnitList(scene: Scene): UnitList {
  const { pipeline } = scene;
  const alarms = scene.alarms();
  const nowMs = scene.nowMs();
  return {
    units: pipeline.site.units.map((unit, index) => {
      const own = alarms.filter(({ record }) => record.unit === unit.id).map(({ record }) => record.priority);
      const { mode, known } = pipeline.modeOf(index);
      return {
        id: unit.id,
        hall: pipeline.site.halls[unit.hall]?.id ?? '',
        name: unit.name,
        mode,
        modeKnown: known,
        worstPriority: own.length === 0 ? null : own.reduce((worst, priority) => (priority < worst ? priority : worst)),
        standingAlarms: own.length,
        age: ageOfUnit(pipeline, index, nowMs),
      };
    }),
  };
}
