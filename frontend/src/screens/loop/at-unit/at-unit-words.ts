import { isAbsent } from '@ebbline/shared/contract/is-absent';
import type { Reading } from '@ebbline/shared/contract/reading';
import { sayReasons } from '../../../text/words';
import type { PointMap } from '../point-map';
import { doesNotApply } from '../point-map';

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** What stands before the time that a tank clock gives, or in its place: nobody may read a missing clock as one that stands still. */
export function sayClock(point: 'timeToEmpty' | 'timeToFull', reading: Reading, tank: string): string {
  const name = capital(tank);
  if (reading.value !== null) return point === 'timeToEmpty' ? `${name} is empty in ` : `${name} is full in `;
  if (isAbsent(reading)) return `${name}: no clock at this unit`;
  if (doesNotApply(reading)) return point === 'timeToEmpty' ? `${name} is not emptying` : `${name} is not filling`;
  if (reading.reasons.includes('warming')) return `${name}: not watched long enough`;
  if (reading.reasons.includes('undefined')) return `${name}: too slow to tell`;
  return `${name}: not known, ${sayReasons(reading.reasons)}`;
}

const yes = (points: PointMap, id: string): boolean | null => {
  const point = points.get(id);
  if (point === undefined || point.value === null || point.quality === 'bad') return null;
  return point.value > 0;
};

/** Whether the vacuum source runs, and what stands by; what is not known is not said. */
export function saySource(points: PointMap): readonly string[] {
  const running = yes(points, 'vacuum.running');
  const standby = yes(points, 'vacuum.standby.running');
  const available = yes(points, 'vacuum.available');
  const states = [
    ...(running === null ? [] : [running ? 'running' : 'not running']),
    ...(standby === true ? ['standby runs too'] : []),
    ...(standby !== true && available !== null ? [available ? 'standby ready' : 'no standby ready'] : []),
  ].join(', ');
  return states === '' ? [] : [states];
}
