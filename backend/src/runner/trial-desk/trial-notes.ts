import type { GroupEntry } from '../../evaluation/alarm-rules/entry';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import { isOfGroup } from './trial-plan';
import type { TrialRun } from './trial-run';

const utc = (ms: number): string => new Date(ms).toISOString().slice(0, 16).replace('T', ' ');

/** What a trial can not know, and what went wrong. */
export function trialNotes(run: TrialRun, site: CompiledSite): string[] {
  const { entry, fromMs, method, subjects } = run.plan;
  const units = subjects.map(({ unit }) => unit);
  const notes = [
    'Told as the condition and its delays would have it. What folds under another alarm, was shelved or out of service, and which permits were open then, is not counted in.',
    'Data that is missing ends no alarm: one that stood when data ended counts on until data says that it is over.',
  ];
  if (isOfGroup(entry))
    notes.push(
      `Judged for each ${entry.per} of the chosen units, with all of its units: ${subjects.map(({ group }) => nameOf(site, entry, group)).join(', ')}. Each is named by its first unit, whose setting it has.`,
    );
  if (run.tellsAgain)
    notes.push(
      'When people acknowledged is not asked: told anew counts as if each were acknowledged as soon as it is told, which is the most that can be.',
    );
  if (method === 'stored') {
    notes.push(
      'Judged on points as recorded, a value a second: an onset may differ by a second from what was told. History has whether a value was good, uncertain or bad, and no longer why.',
    );
    if (run.isGuarded)
      notes.push(
        run.probes === 0
          ? 'History has no uncertainties, and the guard that the rule keeps could not be worked out anew: judged without it.'
          : `History has no uncertainties: the guard that the rule keeps was worked out anew at ${run.probes} ${run.probes === 1 ? 'place' : 'places'} of the period, and holds around each.`,
      );
  } else {
    notes.push(
      'Everything was worked out anew from what was measured. Means and what is usual begin empty shortly before the period: rules that need hours or weeks of them say nothing at first.',
    );
    const shared = units.some((at) => (site.loops[site.units[at]?.loop ?? -1]?.units.length ?? 1) > 1);
    if (shared) notes.push('Each unit was judged by itself: comparisons with other units of its loop are left out.');
  }
  if (entry.id.startsWith('CHEM'))
    notes.push('Values that people typed are not in history: only what sensors told is judged.');
  if (run.minutesBeforeMs > fromMs)
    notes.push(
      method === 'stored'
        ? `Before ${utc(run.minutesBeforeMs)} UTC only minutes are kept: judged by the mean of each, so that what is shorter is not seen.`
        : `Before ${utc(run.minutesBeforeMs)} UTC only minutes are kept, from which nothing can be worked out anew: left out.`,
    );
  const settings = new Set(units.map((at) => JSON.stringify(site.units[at]?.limits.get(entry.id) ?? null)));
  if (settings.size > 1)
    notes.push(
      `The units are not all set alike: each ran with its own setting; shown is that of ${site.units[units[0] ?? -1]?.id ?? ''}.`,
    );
  if (run.fault !== null) notes.push(`It ended early: ${run.fault}`);
  return notes;
}

const nameOf = (site: CompiledSite, { per }: GroupEntry, group: number | null): string =>
  (per === 'loop' ? site.loops : site.halls)[group ?? -1]?.name ?? '';
