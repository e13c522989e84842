import type { AlarmListing, ListedAlarm, ListedSetting } from '@ebbline/shared/contract/alarm-list';
import { toCsv, type CsvCell } from './csv/to-csv';

type Column = readonly [title: string, cell: (entry: ListedAlarm, setting: ListedSetting) => CsvCell];

const members = [
  'limit',
  'low',
  'deadband',
  'onDelaySeconds',
  'offDelaySeconds',
  'reAlarmAfterSeconds',
  'enabled',
  'action',
] as const;

/** One line for each place where an entry is set; what holds for the entry is said in each of its lines. */
const columns: readonly Column[] = [
  ['entry', ({ entry }) => entry],
  ['title', ({ title }) => title],
  ['scope', (_, { scope }) => scope.kind],
  ['place', (_, { scope }) => (scope.kind === 'site' ? null : scope.id)],
  ['unit_of_measure', ({ unit_of_measure }) => unit_of_measure],
  ...members.map((member): Column => [member, (_, { running }) => running[member]]),
  ...members.map((member): Column => [`authorised ${member}`, (_, { authorised }) => authorised[member]]),
  ['differs', (_, { differs }) => differs.join(' ')],
  ['type', ({ type }) => type],
  ['judged', ({ judged }) => judged],
  ['class', ({ class: name }) => name],
  ['severity', ({ severity }) => severity],
  ['timeToRespondSeconds', ({ timeToRespondSeconds }) => timeToRespondSeconds],
  ['timeNeededSeconds', ({ timeNeededSeconds }) => timeNeededSeconds],
  ['priority', ({ priority }) => priority],
  ['worse', ({ worse }) => (worse === null ? null : `${worse.priority}: ${worse.when}`)],
  ['configured', ({ configured }) => configured ?? null],
  ['latching', ({ latching }) => latching],
  ['cause', ({ cause }) => cause],
  ['consequence', ({ consequence }) => consequence],
  ...(['a', 'b', 'c'] as const).map((shape): Column => [
    `action ${shape}`,
    ({ actions }) => actions.find((action) => action.shape === shape)?.text ?? null,
  ]),
  ['confirm', ({ confirm }) => confirm],
  ['basis', ({ basis }) => basis],
  ['designLimit', ({ designLimit }) => designLimit],
  ['stateDependent', ({ stateDependent }) => stateDependent ?? null],
  ['offInModes', ({ offInModes }) => offInModes.join(' ')],
  ['suppressedBy', ({ suppressedBy }) => suppressedBy.join(' ')],
  ['owner', ({ owner }) => owner],
  ['reviewBy', ({ reviewBy }) => reviewBy],
  ['changeLink', ({ changeLink }) => changeLink],
];

/** The list of alarms as a table. */
export const alarmListTable = ({ entries }: AlarmListing): string =>
  toCsv(
    columns.map(([title]) => title),
    entries.flatMap((entry) => entry.settings.map((setting) => columns.map(([, cell]) => cell(entry, setting)))),
  );
