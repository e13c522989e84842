import type { FigureRow } from '../figure-row';
import { acknowledgedTooFast } from './acknowledged-too-fast';
import { afterAnUpset } from './after-an-upset';
import { annunciationsPerDay } from './annunciations-per-day';
import { annunciationsPerHour } from './annunciations-per-hour';
import { annunciationsPerTenMinutes } from './annunciations-per-ten-minutes';
import { chatteringAlarms } from './chattering-alarms';
import { configuredAlarms } from './configured-alarms';
import { fleetingAlarms } from './fleeting-alarms';
import { foldedConsequences } from './folded-consequences';
import { hoursOverThirty } from './hours-over-thirty';
import { mostInTenMinutes } from './most-in-ten-minutes';
import { staleOnADay } from './stale-on-a-day';
import { standingMean } from './standing-mean';
import { standingMost } from './standing-most';
import { steadyRate } from './steady-rate';
import { tenMinutesOverTen } from './ten-minutes-over-ten';
import { tenMostFrequentShare } from './ten-most-frequent-share';
import { timeInFlood } from './time-in-flood';
import { unauthorised } from './unauthorised';

/** Every figure that has one number, in the order in which it is shown. */
export const figures: readonly FigureRow[] = [
  annunciationsPerDay,
  annunciationsPerHour,
  annunciationsPerTenMinutes,
  hoursOverThirty,
  tenMinutesOverTen,
  mostInTenMinutes,
  timeInFlood,
  steadyRate,
  afterAnUpset,
  tenMostFrequentShare,
  chatteringAlarms,
  fleetingAlarms,
  staleOnADay,
  standingMean,
  standingMost,
  unauthorised,
  acknowledgedTooFast,
  foldedConsequences,
  configuredAlarms,
];
