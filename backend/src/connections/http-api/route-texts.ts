import { alarmListRouteTexts } from './alarm-list-route-texts';
import type { RouteKey } from '@ebbline/shared/contract/route-table';
import { limitTrialRouteTexts } from './limit-trial-route-texts';
import { alarmActionRouteTexts } from './alarm-action-route-texts';
import { peopleRouteTexts } from './people-route-texts';
import { guidedRouteTexts } from './guided-route-texts';
import { pastRouteTexts } from './past-route-texts';
import { mappingRouteTexts } from './mapping-route-texts';
import { noteRouteTexts } from './note-route-texts';
import { reportRouteTexts } from './report-route-texts';
import { trendRouteTexts } from './trend-route-texts';

/** What each route is for, in one line; the compiler refuses a route without. */
export const routeTexts: Readonly<Record<RouteKey, { readonly operationId: string; readonly summary: string }>> = {
  ...peopleRouteTexts,
  ...pastRouteTexts,
  ...guidedRouteTexts,
  ...alarmActionRouteTexts,
  ...limitTrialRouteTexts,
  ...alarmListRouteTexts,
  ...mappingRouteTexts,
  ...noteRouteTexts,
  ...reportRouteTexts,
  ...trendRouteTexts,
  'get /api/health': { operationId: 'health', summary: 'How the program itself is: what is unwell and what to do.' },
  'get /api/health/alive': { operationId: 'alive', summary: 'Whether the process answers at all.' },
  'get /api/health/ready': {
    operationId: 'ready',
    summary:
      'Whether it judges the plant; else 503 and `reasons`. What is unwell beside that is for /api/health to say.',
  },
  'get /api/site': { operationId: 'site', summary: 'What there is: halls, units, branches, plates and wetted places.' },
  'get /api/units': {
    operationId: 'units',
    summary: 'Every unit in a line: mode, worst alarm, age of its newest sample.',
  },
  'get /api/units/{unit}/points': {
    operationId: 'points',
    summary: 'Every point of a unit and of its hall, measured and derived, now.',
  },
  'get /api/units/{unit}/points/{point}/explanation': {
    operationId: 'explanation',
    summary: 'What stands behind the value of a point: equation, source, inputs, uncertainty budget.',
  },
  'get /api/halls/{hall}/points/{point}/explanation': {
    operationId: 'hallExplanation',
    summary: 'The same for a hall: its own points, and `heatRemoved`, `chipPower` and `capture` over its units.',
  },
  'get /api/halls/{hall}/trails': {
    operationId: 'hallTrails',
    summary: 'Lowest and highest wetted pressure of each minute of the last hour, of every loop of a hall.',
  },
  'get /api/history': {
    operationId: 'history',
    summary: 'A point over time, as columns of equal buckets; null where nothing was measured.',
  },
  'get /api/units/{unit}/water': {
    operationId: 'water',
    summary:
      'Quality of the water of a unit: each parameter with its value, its band, and when a person is to look again.',
  },
  'get /api/units/{unit}/hand-entries': {
    operationId: 'handEntries',
    summary: 'Values of the water that people typed, newest sample first, corrected ones among them.',
  },
  'post /api/units/{unit}/hand-entries': {
    operationId: 'enterByHand',
    summary: 'Takes in a value of the laboratory or of a hand instrument; confirmed once it is committed.',
  },
  'post /api/units/{unit}/hand-entries/{id}/correct': {
    operationId: 'correctHandEntry',
    summary: 'Puts another value in the place of an entry; the first one stays on record.',
  },
  'post /api/units/{unit}/hand-entries/{id}/withdraw': {
    operationId: 'withdrawHandEntry',
    summary: 'Withdraws an entry and says why: the sample before it is in force again. It stays on record.',
  },
  'get /api/energy': {
    operationId: 'energy',
    summary: 'Heat and electrical energy by local hour, day or month, with how much of each was measured.',
  },
  'get /api/alarms': {
    operationId: 'alarms',
    summary: 'Standing alarms as the journal has them, whoever most needs a person first.',
  },
  'get /api/alarms/journal': { operationId: 'journal', summary: 'Every change and action in order, 500 a page.' },
  'get /api/alarms/performance': {
    operationId: 'alarmPerformance',
    summary: 'How well the alarms served the operator: every figure beside its target, over any period and hall.',
  },
  'post /api/alarms/{id}/acknowledge': {
    operationId: 'acknowledge',
    summary: 'Says that a person has seen the alarm; confirmed once it is committed.',
  },
  'get /api/intake': {
    operationId: 'intake',
    summary: 'What has come in by topic, and what was refused and why, with an example of each.',
  },
  'get /api/units/{unit}/limits': {
    operationId: 'limits',
    summary: 'Which limit of which alarm is drawn beside which point of a unit.',
  },
  'get /api/units/{unit}/setup': {
    operationId: 'setup',
    summary: 'Every measured point of a unit and its hall: topic, place in the payload, and whether it arrives.',
  },
  'post /api/site/check': {
    operationId: 'checkSite',
    summary: 'Says whether a text would do as a site file, with every fault by line and key. Changes nothing.',
  },
  'get /api/site/state': {
    operationId: 'siteState',
    summary: 'Which content of the site file is in force since when, and whether a newer one was refused and why.',
  },
  'post /api/site/reload': {
    operationId: 'reloadSite',
    summary: 'Reads the site file now; answers when its content is in force, or refused whole.',
  },
  'get /api/alerts': {
    operationId: 'alerts',
    summary: 'What an engineer is to know; no alarm, and never counted as one.',
  },
  'get /api/permits': { operationId: 'permits', summary: 'Open and overdue permits, those that end first on top.' },
  'post /api/permits': {
    operationId: 'openPermit',
    summary: 'Opens a permit for work on a branch or a whole loop; confirmed once it is committed.',
  },
  'post /api/permits/{id}/close': {
    operationId: 'closePermit',
    summary: 'Closes a permit before it closes by itself.',
  },
  'get /api/units/{unit}/tightness-tests': {
    operationId: 'tightnessTests',
    summary: 'Pressure-rise tests of a unit, newest first, with the cautions and what is in the way of a new one.',
  },
  'get /api/units/{unit}/tightness-tests/{id}': {
    operationId: 'tightnessTest',
    summary: 'One pressure-rise test with all that belongs to its record, to be printed.',
  },
  'post /api/units/{unit}/tightness-tests': {
    operationId: 'startTightnessTest',
    summary: 'Starts a pressure-rise test where the loop stands ready for it; confirmed once it is committed.',
  },
  'post /api/units/{unit}/tightness-tests/{id}/end': {
    operationId: 'endTightnessTest',
    summary: 'Ends a pressure-rise test before its time; what was measured is judged and kept.',
  },
  'get /api/intake/last': {
    operationId: 'lastPayload',
    summary: 'The newest payload of one topic since it was first asked for, as it came, and why it was refused if so.',
  },
  'get /api/demo/faults': {
    operationId: 'demoFaults',
    summary: 'Demo site only: what the simulated plants can be told, and what is going on in them.',
  },
  'post /api/demo/faults': {
    operationId: 'demoCommand',
    summary: 'Demo site only: starts or repairs a fault, or gives an order; answers with what the simulator confirmed.',
  },
};
