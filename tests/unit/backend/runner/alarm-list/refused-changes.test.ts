import { describe, expect, it } from 'vitest';
import type { SettingRecord } from '../../../../../backend/src/evaluation/alarm-rules/settings/setting-record';
import { toSettings } from '../../../../../backend/src/evaluation/alarm-rules/settings/to-settings';
import type { JournalPage, JournalQuery } from '../../../../../backend/src/ports/journal-query';
import { RefusedChanges } from '../../../../../backend/src/runner/alarm-list/refused-changes';
import { SettingsInForce } from '../../../../../backend/src/runner/alarm-list/settings-in-force';
import { toldOfChanges, type ToldOfChange } from '../../../../../backend/src/runner/alarm-list/told-of-changes';
import { smallSite } from '../../../../helpers/small-site';
import { m1, startMs } from './opened-desk';

const live = toSettings('MARGIN-1', undefined);
const fit: SettingRecord = {
  ...{ id: 'setting-2', atMs: startMs + 1, entry: 'MARGIN-1', scope: m1, operator: 'Ines', station: 'desk' },
  ...{ set: { limit: 6000 }, old: live, new: { ...live, limit: 6000 }, reason: 'a drill', link: '' },
};
/** Of an entry that no catalogue has: it fits no site. */
const unfit: SettingRecord = { ...fit, id: 'setting-1', atMs: startMs, entry: 'MARGIN-9' };

/** What a program tells at its start, of what the programs before it told. */
function started(records: readonly SettingRecord[], toldBefore: readonly ToldOfChange[]): readonly ToldOfChange[] {
  const told: ToldOfChange[] = [];
  const record = (cause: ToldOfChange['cause'], reason: string): boolean => told.push({ cause, reason }) > 0;
  const refused = new RefusedChanges({ settings: new SettingsInForce(smallSite(), records), record, toldBefore });
  refused.look();
  return told;
}

describe('changes that a site file leaves behind, over a restart', () => {
  const first = started([unfit], []);

  it('are not told anew, as long as they are refused for the same reason', () => {
    expect(first.map(({ cause }) => cause)).toEqual(['settingRefused']);
    expect(started([unfit], first)).toEqual([]);
    const other = first.map((one) => ({ ...one, reason: one.reason.replace(/: .*/s, ': something else') }));
    expect(started([unfit], other)).toEqual(first);
  });

  it('are told anew where the last word was that they fit', () => {
    const fits = first.map(({ reason }) => ({
      cause: 'settingFits' as const,
      reason: reason.replace(/ is not in force: .*/s, ' fits the site file again.'),
    }));
    expect(started([unfit], [...first, ...fits])).toEqual(first);
  });

  it('are told to fit again where the file was mended while the program was down', () => {
    const reason = `The change of MARGIN-1 for unit m1 by Ines at ${new Date(startMs + 1).toISOString()} is not in force: x`;
    expect(started([fit], [{ cause: 'settingRefused', reason }])).toMatchObject([
      { cause: 'settingFits', reason: expect.stringMatching(/fits the site file again/) as string },
    ]);
  });

  it('are found in the journal page by page, by their cause alone, oldest first', () => {
    const row = (sequence: number, cause: string) => ({ sequence, cause, reason: `${cause} ${sequence}` });
    const pages: Record<string, object> = {
      'settingRefused null': { rows: [row(4, 'settingRefused'), row(5, 'noted')], next: 5 },
      'settingRefused 5': { rows: [row(9, 'settingRefused')], next: null },
      'settingFits null': { rows: [row(7, 'settingFits')], next: null },
    };
    const page = ({ after, text }: JournalQuery) => pages[`${text ?? ''} ${String(after)}`] as unknown as JournalPage;
    expect(toldOfChanges({ page }).map(({ reason }) => reason)).toEqual([
      'settingRefused 4',
      'settingFits 7',
      'settingRefused 9',
    ]);
  });
});
