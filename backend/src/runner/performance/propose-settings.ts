import type { AlarmPerformance } from '@ebbline/shared/contract/alarm-performance';
import type { Annunciation } from '../../evaluation/alarm-performance/annunciation';
import { byAlarm, type Burst } from '../../evaluation/alarm-performance/chattering';
import { deadbandOver } from '../../evaluation/alarm-performance/proposals/deadband';
import { offDelayOver, pausesOf, type Pause } from '../../evaluation/alarm-performance/proposals/off-delay';
import { onDelayOver } from '../../evaluation/alarm-performance/proposals/on-delay';
import type { Told } from '../../evaluation/alarm-performance/told';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import type { HistoryStore } from '../../ports/history-store';
import { judgedOf, type Judged } from './judged-of';
import { valuesDuring } from './values-during';

type Proposal = NonNullable<AlarmPerformance['chattering'][number]['proposal']>;

export interface ProposingParts {
  readonly site: CompiledSite;
  readonly store: Pick<HistoryStore, 'readSeconds'>;
}

/** So many alarms are looked at, those told most often first: history is read for each. */
const looksAt = 20;

/** For each alarm that chatters, or is gone too soon, what could be set instead; those without are left out. */
export async function proposeSettings(
  told: Told,
  { site, store }: ProposingParts,
): Promise<{ readonly chattering: ReadonlyMap<string, Proposal>; readonly fleeting: ReadonlyMap<string, Proposal> }> {
  const chattering = new Map<string, Proposal>();
  const fleeting = new Map<string, Proposal>();
  for (const [alarm, bursts] of mostFirst(burstsByAlarm(told.bursts))) {
    const judged = judgedOf(site, alarm, bursts[0]?.annunciations[0]);
    const proposal = judged === null ? null : await forChattering(bursts, judged, store);
    if (proposal !== null) chattering.set(alarm, proposal);
  }
  for (const [alarm, gone] of mostFirst(byAlarm(told.fleeting))) {
    const judged = judgedOf(site, alarm, gone[0]);
    const proposal = judged === null ? null : forFleeting(gone, judged);
    if (proposal !== null) fleeting.set(alarm, proposal);
  }
  return { chattering, fleeting };
}

async function forChattering(
  bursts: readonly Burst[],
  judged: Judged,
  store: Pick<HistoryStore, 'readSeconds'>,
): Promise<Proposal | null> {
  const pauses = bursts.flatMap((burst) => pausesOf(burst, judged.limits));
  return (await byDeadband(bursts, pauses, judged, store)) ?? byOffDelay(bursts, pauses, judged);
}

async function byDeadband(
  bursts: readonly Burst[],
  pauses: readonly Pause[],
  { line, limits, unitOfMeasure }: Judged,
  store: Pick<HistoryStore, 'readSeconds'>,
): Promise<Proposal | null> {
  if (line === null || pauses.length === 0) return null;
  const values = await valuesDuring(pauses, line, store);
  const found = values === null ? null : deadbandOver({ ...line, deadband: limits.deadband, values });
  if (found === null) return null;
  const measure = unitOfMeasure === null || unitOfMeasure === '1' ? '' : ` ${unitOfMeasure}`;
  const why = `In ${spells(bursts)} the recorded ${line.point} came back past the limit by ${shown(found.wayBack)}${measure} at most before the alarm was told again; with a deadband of ${shown(found.deadband)}${measure} each would have been one alarm.`;
  return { set: { deadband: found.deadband }, unit_of_measure: unitOfMeasure, why };
}

function byOffDelay(
  bursts: readonly Burst[],
  pauses: readonly Pause[],
  { limits, unitOfMeasure }: Judged,
): Proposal | null {
  const found = offDelayOver(pauses);
  if (found === null || found.offDelayMs <= limits.offDelayMs) return null;
  const offDelaySeconds = found.offDelayMs / 1000;
  const why = `In ${spells(bursts)} the condition was gone for ${shown(found.longestMs / 1000)} s at most, by the times of the journal; with an off-delay of ${offDelaySeconds} s each would have been one alarm.`;
  return { set: { offDelaySeconds }, unit_of_measure: unitOfMeasure, why };
}

function forFleeting(
  gone: readonly Annunciation[],
  { limits, unitOfMeasure, timeToRespondMs }: Judged,
): Proposal | null {
  const found = onDelayOver(gone, limits, timeToRespondMs);
  if (found === null) return null;
  const onDelaySeconds = found.onDelayMs / 1000;
  const why = `${found.spared} of ${found.of} conditions lasted ${shown(found.longestMs / 1000)} s at most, by the times of the journal; an on-delay of ${onDelaySeconds} s would not have told them, and leaves three quarters of the time to respond.`;
  return { set: { onDelaySeconds }, unit_of_measure: unitOfMeasure, why };
}

const spells = ({ length }: readonly Burst[]): string => (length === 1 ? 'the one spell' : `the ${length} spells`);

const shown = (value: number): string => String(Number(value.toPrecision(3)));

function burstsByAlarm(bursts: readonly Burst[]): Map<string, Burst[]> {
  const found = new Map<string, Burst[]>();
  for (const burst of bursts) {
    const list = found.get(burst.alarm);
    if (list === undefined) found.set(burst.alarm, [burst]);
    else list.push(burst);
  }
  return found;
}

const mostFirst = <T>(lists: ReadonlyMap<string, readonly T[]>): (readonly [string, readonly T[]])[] =>
  [...lists].sort(([, a], [, b]) => b.length - a.length).slice(0, looksAt);
