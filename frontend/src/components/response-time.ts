import type { Alarm } from '@ebbline/shared/contract/alarm';
import { isGone } from './alarm-facts';

/** How the time to respond to an alarm stands. Seconds count from now: what is past is negative. */
export interface ResponseTime {
  /** When it was told; 0 or less. */
  readonly toldSeconds: number;
  /** When the time to respond is over; negative once it is. */
  readonly dueSeconds: number;
  readonly wholeSeconds: number;
}

/**
 * When an alarm was told: an alarm that was told again while its condition held counts anew. Where that is not known,
 * the condition's beginning stands for it, which is never later.
 */
export const toldAt = (alarm: Pick<Alarm, 'annunciatedAt' | 'state' | 'stateSince' | 'since'>): string =>
  alarm.annunciatedAt ?? (alarm.state === 'unacknowledged' ? alarm.stateSince : alarm.since);

/** Null where nothing runs: the condition has gone, or the time in force is not known. @param now ISO 8601 */
export function responseTime(alarm: Alarm, now: string | null): ResponseTime | null {
  if (now === null || alarm.state === 'normal' || isGone(alarm.state)) return null;
  const toldSeconds = Math.min(0, (Date.parse(toldAt(alarm)) - Date.parse(now)) / 1000);
  const wholeSeconds = alarm.timeToRespondSeconds;
  return { toldSeconds, dueSeconds: toldSeconds + wholeSeconds, wholeSeconds };
}

/** The axis runs evenly up to this and by decades beyond: seconds and days are both to be seen. s */
const kneeSeconds = 20;
const pastEnd = -2 * 3600;
const aheadEnd = 24 * 3600;

const decades = (seconds: number): number => Math.sign(seconds) * Math.log10(1 + Math.abs(seconds) / kneeSeconds);
const [low, high] = [decades(pastEnd), decades(aheadEnd)];

/** Where a moment stands on a strip, as a share of its width: 0 is two hours ago, 1 a day ahead; what is further stands at the end. */
export function onResponseAxis(seconds: number): number {
  return Math.min(1, Math.max(0, (decades(seconds) - low) / (high - low)));
}

/** Marks of the axis, s from now; those that stand close to others go without a word. */
export const responseTicks: readonly { readonly seconds: number; readonly label: string }[] = [
  { seconds: -3600, label: '1\u00a0h ago' },
  { seconds: -60, label: '' },
  { seconds: 0, label: 'now' },
  { seconds: 60, label: '' },
  { seconds: 600, label: '10\u00a0min' },
  { seconds: 3600, label: '' },
  { seconds: aheadEnd, label: '1\u00a0d' },
];
