import type { AlarmSpan } from '@ebbline/shared/contract/trends';
import { formatMoment } from '../../text/format-time';
import { saySpan } from '../../text/say-span';
import { priorityWords } from '../../text/words';

/** All of an alarm's time in one line. @param unitName null where all are of one unit */
export function sayAlarmSpan(span: AlarmSpan, unitName: string | null, zone: string): string {
  const { acknowledged, foldedUnder, from, priority, title, to, where } = span;
  const of = [unitName, where].filter((part) => part !== null).join(', ');
  const parts = [
    `Priority ${priority}, ${priorityWords[priority]}: ${title}${of === '' ? '' : ` (${of})`}`,
    saidTime(from, to, zone),
    acknowledged === null ? 'not acknowledged' : `acknowledged ${formatMoment(acknowledged, zone)}`,
    ...(foldedUnder === null ? [] : [`followed from ${foldedUnder}`]),
  ];
  return `${parts.join('; ')}.`;
}

function saidTime(from: string | null, to: string | null, zone: string): string {
  const began = from === null ? 'raised before what can be told' : `raised ${formatMoment(from, zone)}`;
  if (to === null) return `${began}, still stands`;
  const lasted = from === null ? '' : `, after ${saySpan((Date.parse(to) - Date.parse(from)) / 1000)}`;
  return `${began}, cleared ${formatMoment(to, zone)}${lasted}`;
}
