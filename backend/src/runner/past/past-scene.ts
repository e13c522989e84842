import type { ClockState } from '@ebbline/shared/contract/http-api';
import { isSetAside } from '../../evaluation/alarm-lifecycle/mode-facts';
import { path } from '../../evaluation/derive/path';
import { pressureWindow, type HourExtremes } from '../../evaluation/derive/pressure-window';
import { alarmTexts } from '../../evaluation/pipeline/alarm-texts';
import { isStanding } from '../../evaluation/pipeline/standing-water';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import type { StandingThen } from '../../ports/alarm-journal';
import type { PictureScene } from '../views/scene';
import { timeText } from '../views/time-text';
import type { PastValues } from './past-values';

export interface PastMoment {
  readonly site: CompiledSite;
  readonly values: PastValues;
  readonly standing: StandingThen;
  /** The last ms of the second that is shown. */
  readonly nowMs: number;
  readonly clock: ClockState['kind'];
  /** Lowest and highest of the hour before, by unit. */
  readonly hour: ReadonlyMap<number, HourExtremes>;
}

const noHour: HourExtremes = { lowestPa: null, highestPa: null };

/** A past second as what the views draw from: recorded values, and alarms, alerts and permits as the journal had them then. */
export function pastScene({ site, values, standing, nowMs, clock, hour }: PastMoment): PictureScene {
  const { state, modeOf } = values;
  const kept = standing.alarms.map((record) => ({ record, recorded: true }));
  const shown = kept.filter(({ record }) => !isSetAside(record));
  const aside = kept.filter(({ record }) => isSetAside(record));
  return {
    pipeline: {
      site,
      state,
      modeOf,
      permits: () => standing.permits,
      alerts: () => standing.alerts,
      detailOf: () => null,
      pressureWindow: (unit, atMs) =>
        pressureWindow(site, state, unit, atMs, hour.get(unit) ?? noHour, isStanding(modeOf(unit))),
      path: (unit) => path(site, state, unit, isStanding(modeOf(unit))),
    },
    nowMs: () => nowMs,
    clock: () => ({ kind: clock, now: timeText(nowMs) }),
    alarms: () => shown,
    setAside: () => aside,
    textsOf: (record) => alarmTexts(site, record),
  };
}
