import { join } from 'node:path';
import type { JournalRow } from '@ebbline/shared/contract/alarm';
import { expect } from 'vitest';
import { verifyJournalCommand } from '../../../backend/src/connections/alarm-journal/verify-journal-command';
import type { Ebbline } from '../../helpers/ebbline';
import { expectWholeChain, journalOf } from '../../helpers/journal-of';
import { until } from '../../helpers/until';
import type { Told } from './acknowledger';

/** What `npm run journal:verify` says of a data folder: every row follows the one before. */
export function expectWholeJournal(data: string): void {
  const said: string[] = [];
  const code = verifyJournalCommand(
    [],
    join(data, 'journal.sqlite'),
    (text) => said.push(text),
    (text) => said.push(text),
  );
  expect({ code, said: said.join(' ') }).toEqual({ code: 0, said: expect.stringContaining('whole') as unknown });
}

/** Every confirmed acknowledgement is in the journal exactly once, one without an answer at most once, and no row is missing. */
export function expectEachOnce(rows: readonly JournalRow[], told: readonly Told[]): void {
  expect(rows[0]?.sequence).toBe(1);
  expectWholeChain(rows);
  const times = new Map<string, number>();
  for (const { alarm, reason, kind } of rows)
    if (kind === 'action') times.set(`${alarm} ${reason}`, (times.get(`${alarm} ${reason}`) ?? 0) + 1);
  const timesOf = ({ alarm, comment }: Told): number => times.get(`${alarm} ${comment}`) ?? 0;
  expect(told.filter((one) => one.confirmed && timesOf(one) !== 1)).toEqual([]);
  expect(told.filter((one) => !one.confirmed && timesOf(one) > 1)).toEqual([]);
}

/** The alarms that stand are those which the journal's rows add up to, each in the state that its last row left it in. */
export async function expectAlarmsOfJournal(ebbline: Ebbline): Promise<readonly JournalRow[]> {
  const rows: JournalRow[] = [];
  const further = async (): Promise<number> => rows.push(...(await journalOf(ebbline, rows.at(-1)?.sequence ?? 0)));
  const quiet = async () => {
    const before = await further();
    const alarms = await ebbline.alarms();
    return (await further()) === before ? alarms : null;
  };
  const alarms = await until(quiet, { everyMs: 100, what: 'a moment without a change' });
  const states = new Map<string, string>();
  for (const { alarm, entry, to } of rows) if (alarm !== null && entry !== null && to !== null) states.set(alarm, to);
  for (const [alarm, state] of states) if (state === 'normal') states.delete(alarm);
  expect(Object.fromEntries(alarms.map(({ id, state }) => [id, state]))).toEqual(Object.fromEntries(states));
  return rows;
}
