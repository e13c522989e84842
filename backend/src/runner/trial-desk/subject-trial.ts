import type { OutcomeLog } from '../../evaluation/limit-trial/outcome-log';
import { groupTrial } from '../../evaluation/limit-trial/group-trial';
import { recomputedTrial } from '../../evaluation/limit-trial/recomputed-trial';
import { storedTrial } from '../../evaluation/limit-trial/stored-trial';
import type { UnitTrial } from '../../evaluation/limit-trial/trial-columns';
import { limitsOf, withProposed } from '../../evaluation/limit-trial/trial-settings';
import { siteOfUnit } from '../../evaluation/limit-trial/unit-site';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import { isOfGroup, type TrialPlan } from './trial-plan';
import { siteOfGroup, type TrialSubject } from './trial-subject';

interface SubjectTrial {
  /** Its own small site. */
  readonly site: CompiledSite;
  readonly trial: UnitTrial;
}

/** How one unit, or one loop or hall, is run with both settings. */
export function subjectTrial(
  site: CompiledSite,
  { entry, fromMs, method, request }: TrialPlan,
  { group, unit }: TrialSubject,
  logs: { readonly live: OutcomeLog; readonly proposed: OutcomeLog },
): SubjectTrial {
  const live = site.units[unit]?.limits.get(entry.id);
  const proposed = withProposed(live, request.proposed);
  logs.live.reAlarmAfterMs = limitsOf(entry.id, live).reAlarmAfterMs ?? Number.POSITIVE_INFINITY;
  logs.proposed.reAlarmAfterMs = limitsOf(entry.id, proposed).reAlarmAfterMs ?? Number.POSITIVE_INFINITY;
  if (isOfGroup(entry)) {
    const at = group ?? -1;
    const own = siteOfGroup(site, entry, at);
    const part = (entry.per === 'loop' ? site.loops : site.halls)[at]?.id ?? '';
    const named = { unit: site.units[unit]?.id ?? '', part };
    const place = entry.per === 'loop' ? 0 : at;
    const trial = groupTrial({ site: own, entry, group: place, named, live, proposed, logs, toldFromMs: fromMs });
    if (trial === null) throw new RangeError(`${entry.id} cannot be tried for ${part}, which the plan has`);
    return { site: own, trial };
  }
  const own = siteOfUnit(site, unit);
  const of = { site: own, entry: entry.id, proposed, logs, toldFromMs: fromMs };
  return { site: own, trial: (method === 'stored' ? storedTrial(of) : null) ?? recomputedTrial(of) };
}
