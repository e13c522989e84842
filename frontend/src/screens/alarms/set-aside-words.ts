import type { SetAsideAlarm } from '@ebbline/shared/contract/alarm-modes';
import type { BroughtBack } from '@ebbline/shared/contract/brought-back';
import { formatDuration } from '../../text/format-age';
import { formatSince } from '../../text/format-time';

type Way = SetAsideAlarm['mode'];

/** In the order in which they want to be looked at: what ends soon, what does not end by itself, what the plant ends. */
export const ways: readonly Way[] = ['shelved', 'outOfService', 'suppressedByDesign'];

export const wayTitles: { readonly [W in Way]: string } = {
  shelved: 'Shelved',
  outOfService: 'Out of service',
  suppressedByDesign: 'Suppressed by design',
};

export const wayTexts: { readonly [W in Way]: string } = {
  shelved: 'ends by itself',
  outOfService: 'until an engineer returns it',
  suppressedByDesign: 'as long as what suppresses it holds',
};

/** Of an alarm that is looked for: that it is set aside already. */
export const modeTexts: { readonly [W in Way]: string } = {
  shelved: 'shelved already',
  outOfService: 'out of service already',
  suppressedByDesign: 'suppressed by design now',
};

/** When it ends, and how long that is from now by the server's time. */
export function sayUntil({ mode, until }: SetAsideAlarm, now: string | null, zone: string): string {
  if (mode === 'suppressedByDesign') return 'as long as that holds';
  if (until === null) return 'no end planned';
  const moment = formatSince(until, now, zone);
  const left = now === null ? Number.NaN : (Date.parse(until) - Date.parse(now)) / 1000;
  if (mode === 'shelved') return left > 0 ? `${formatDuration(left)} left, until ${moment}` : `ends now, ${moment}`;
  return left > 0 ? `planned until ${moment}, in ${formatDuration(left)}` : `planned until ${moment}, overdue`;
}

/** That it is set aside, as the server answered. */
export const saySetAside = (aside: SetAsideAlarm, now: string | null, zone: string): string =>
  aside.mode === 'shelved' && aside.until !== null
    ? `shelved until ${formatSince(aside.until, now, zone)}`
    : 'taken out of service';

/** What has become of an alarm that a person brought back. */
export function sayBroughtBack({ mode, active }: BroughtBack): string {
  if (mode === 'suppressedByDesign') return 'no longer set aside by a person, now suppressed by design';
  return active ? 'told again: its condition holds' : 'in service again: its condition does not hold';
}
