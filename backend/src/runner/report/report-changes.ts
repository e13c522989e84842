import type { JournalRow } from '@ebbline/shared/contract/alarm';
import type { ReportChange, ReportTest } from '@ebbline/shared/contract/report';
import { titleOf } from '../performance/title-of';
import { localTimes } from './local-times';
import { settingText } from './setting-text';

type Kind = ReportChange['kind'];

/** Which rows tell of a change, of what kind, and in which words. Acknowledging changes nothing in the plant. */
const told: Readonly<Record<string, readonly [Kind, (row: JournalRow) => string]>> = {
  settingChanged: ['setting', settingText],
  // A site file left the setting behind, or fits it again: another limit is in force than was set.
  settingRefused: ['setting', said],
  settingFits: ['setting', said],
  siteReloadAsked: ['site', said],
  authorisedListChanged: ['site', said],
  permitOpened: ['permit', (row) => `Permit opened for ${row.where ?? 'the whole loop'}${until(row)}`],
  permitOverdue: ['permit', (row) => `Permit overdue: ${row.where ?? 'the whole loop'}`],
  permitMoved: ['permit', said],
  permitClosed: ['permit', (row) => `Permit closed: ${row.where ?? 'the whole loop'}${byProgram(row)}`],
  shelve: ['setAside', (row) => `${nameOf(row)} shelved for ${minutes(row)}${why(row)}`],
  unshelve: ['setAside', (row) => `${nameOf(row)} brought back from the shelf${why(row)}`],
  shelvingOver: ['setAside', (row) => `${nameOf(row)}: its shelving was over`],
  takeOut: ['setAside', (row) => `${nameOf(row)} taken out of service${why(row)}`],
  returnToService: ['setAside', (row) => `${nameOf(row)} returned to service${why(row)}`],
  handEntered: ['hand', said],
  handCorrected: ['hand', said],
  firstAdminSet: ['people', said],
  personAdded: ['people', said],
  personChanged: ['people', said],
  passwordSet: ['people', said],
  linkMade: ['people', said],
  tokenAdded: ['people', said],
  tokenWithdrawn: ['people', said],
  demoCommanded: ['demo', said],
  programStarted: ['program', said],
  programEnded: ['program', said],
};

const ofTest = /^(tightness|guided)\w*(Started|Ended)$/;

/** What changed among these rows, in their order. */
export const changesOf = (rows: readonly JournalRow[], timeZone: string): ReportChange[] =>
  rows.flatMap((row): ReportChange[] => {
    const [kind, words] = told[row.cause ?? ''] ?? lineUpOf(row) ?? [];
    if (kind === undefined || words === undefined) return [];
    const byHand = kind === 'hand';
    return [
      {
        ...{ sequence: row.sequence, at: row.sourceTime, kind, unit: row.unit, hall: row.hall ?? null },
        what: localTimes(words(row), timeZone),
        point: byHand ? row.where : null,
        value: byHand ? row.value : null,
        unit_of_measure: byHand ? row.unit_of_measure : null,
        by: row.actor,
      },
    ];
  });

/** Guided tests that began or ended among these rows. */
export const testsOf = (rows: readonly JournalRow[], timeZone: string): ReportTest[] =>
  rows
    .filter(({ cause }) => ofTest.test(cause ?? ''))
    .map((row) => ({
      ...{ sequence: row.sequence, at: row.sourceTime, unit: row.unit, by: row.actor },
      what: localTimes(said(row), timeZone),
    }));

/** People have changed the line-up; the plant told it. */
function lineUpOf({ cause, entry }: JournalRow): readonly [Kind, (row: JournalRow) => string] | undefined {
  if (entry !== 'SET-1') return undefined;
  if (cause === 'alertCame') return ['lineUp', (row) => titleOf(row.entry ?? '')];
  if (cause === 'alertWent') return ['lineUp', () => 'Set points and line-up as before'];
  return undefined;
}

function said({ reason, cause }: JournalRow): string {
  const text = reason ?? cause ?? '';
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
const nameOf = ({ entry, where }: JournalRow): string =>
  `${entry ?? ''} ${titleOf(entry ?? '')}${where === null ? '' : ` (${where})`}`.trim();
const why = ({ reason, facts, cause }: JournalRow): string => {
  const text = facts?.setAsideReason ?? reason ?? '';
  return text === '' || text === cause ? '' : `: ${text}`;
};
const minutes = ({ facts }: JournalRow): string =>
  facts?.minutes === undefined ? 'a time' : `${Math.round(facts.minutes)} min`;
const until = ({ reason }: JournalRow): string => (reason ?? '').replace(/^permit opened/, '');
const byProgram = ({ actor }: JournalRow): string =>
  actor === null ? ', by the program: all was back at its baseline' : '';
