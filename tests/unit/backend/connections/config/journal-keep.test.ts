import { describe, expect, it } from 'vitest';
import { readJournalKeep } from '../../../../../backend/src/connections/config/journal-keep';
import type { Fault } from '../../../../../backend/src/connections/config/read-variable';

function read(text: string | undefined): { days: number | null; faults: Fault[] } {
  const faults: Fault[] = [];
  return { days: readJournalKeep('EBBLINE_JOURNAL_KEEP', text, faults), faults };
}

describe('for how long the journal can be searched', () => {
  it.each([
    [undefined, 400],
    ['365', 365],
    ['3650', 3650],
    ['forever', null],
  ])('reads %s as %s', (text, days) => {
    expect(read(text)).toEqual({ days, faults: [] });
  });

  it.each(['364', '0', '-400', '400.5', '1e9', 'a year', '99999999'])('refuses %s', (text) => {
    const { faults } = read(text);
    expect(faults).toMatchObject([{ variable: 'EBBLINE_JOURNAL_KEEP' }]);
    expect(faults[0]?.message).toContain('365 at least, or forever');
    expect(faults[0]?.message).not.toContain(text);
  });
});
