import { describe, expect, it } from 'vitest';
import { lineText } from '../../../../../backend/src/connections/site-files/line-fault';
import { alarmListFromText, readAlarmList } from '../../../../../backend/src/connections/site-files/read-alarm-list';
import { smallSite } from '../../../../helpers/small-site';

const site = smallSite();
const head = `site: small
version: '3'
approvedBy: the cooling engineer
approvedOn: 2031-05-28
`;

/** Faults of a text as its writer is told them. */
function faultsOf(text: string): readonly string[] {
  const read = alarmListFromText(text, 'list.yaml', site);
  return read.ok ? [] : read.fault.map((fault) => lineText('list.yaml', fault));
}

/** Faults of what stands under `entries`, which begins in line 6. */
const inEntries = (text: string): readonly string[] => faultsOf(`${head}entries:\n${text}`);

describe('a list of authorised alarms', () => {
  it('gives settings for the site, halls and units in SI, with owner, review and link', () => {
    const read = alarmListFromText(
      `${head}entries:
  MARGIN-1:
    owner: the night shift
    reviewBy: 2032-05-28
    changeLink: change 7
    site: { limit: 5 kPa, deadband: 0.5 kPa, onDelay: 10 s }
    halls: { north: { onDelay: 15 s } }
    units: { m1: { limit: 6 kPa, enabled: false } }
  CHEM-2: { site: { low: "8", limit: none } }
`,
      'list.yaml',
      site,
    );
    if (!read.ok) throw new Error(JSON.stringify(read.fault));
    const { layers, entries, ...rest } = read.value;
    expect(rest).toEqual({
      file: 'list.yaml',
      version: '3',
      approvedBy: 'the cooling engineer',
      approvedOn: '2031-05-28',
    });
    expect(layers.site.get('MARGIN-1')).toEqual({ limit: 5000, deadband: 500, onDelayMs: 10_000 });
    expect(layers.site.get('CHEM-2')).toEqual({ low: 8, limit: Number.NaN });
    expect(layers.halls.get('north')?.get('MARGIN-1')).toEqual({ onDelayMs: 15_000 });
    expect(layers.units.get('m1')?.get('MARGIN-1')).toEqual({ limit: 6000, enabled: false });
    expect(entries.get('MARGIN-1')).toEqual({
      owner: 'the night shift',
      reviewBy: '2032-05-28',
      changeLink: 'change 7',
    });
  });

  it('is read as JSON too', () => {
    const list = { site: 'small', version: '3', approvedBy: 'x', approvedOn: '2031-05-28', entries: {} };
    expect(faultsOf(JSON.stringify(list))).toEqual([]);
    expect(faultsOf(JSON.stringify({ ...list, site: 'other' }, null, 2))).toEqual([
      'list.yaml:2:3: site: this list is of "other", and the site file of "small"; name the list of this site',
    ]);
  });

  it('is refused with every fault at once, each by line and column', () => {
    const text = `site: small
version: 3
approvedBy:
approvedOn: 2031-02-30
entries:
  MARGIN-1: { colour: green, site: { limit: 5 kPa, colour: red } }
`;
    const faults = faultsOf(text);
    expect(faults.map((fault) => fault.split(': ').slice(0, 2).join(' '))).toEqual([
      'list.yaml:2:1 version',
      'list.yaml:3:1 approvedBy',
      'list.yaml:4:1 approvedOn',
      'list.yaml:6:15 entries.MARGIN-1.colour',
      'list.yaml:6:52 entries.MARGIN-1.site.colour',
    ]);
    expect(faults[3]).toContain('known here are owner, reviewBy, changeLink, site, halls, units');
    expect(faults[4]).toContain(
      'known here are limit, low, deadband, onDelay, offDelay, reAlarmAfter, enabled, action',
    );
  });

  it.each([
    ['an entry that the catalogue has not', '  MARGIN-9: {}\n', /^list\.yaml:6:3: entries\.MARGIN-9: .*no entry/],
    [
      'a hall that is not there',
      '  DEW-1: { halls: { south: {} } }\n',
      /:6:21: entries\.DEW-1\.halls\.south: .*no hall/,
    ],
    ['a unit that is not there', '  DEW-1: { units: { m9: {} } }\n', /:6:21: entries\.DEW-1\.units\.m9: .*no unit/],
    ['a unit of measure that does not fit', '  DEW-1: { site: { limit: 2 kPa } }\n', /:6:20: .*"kPa" does not fit/],
    ['a number without one', '  MARGIN-1: { site: { limit: "5" } }\n', /:6:23: .*no unit of measure/],
    ['a limit of an entry that has none', '  WATER-1: { site: { limit: none } }\n', /:6:22: .*no limit to change/],
    ['a low end without a band', '  MARGIN-1: { site: { low: none } }\n', /:6:23: .*has no band/],
    [
      'settings of what no setting reaches',
      '  COM-1: { site: { onDelay: 1 s } }\n',
      /:6:12: .*which no setting reaches/,
    ],
    ['a unit of an entry that spans units', '  AMB-1: { units: { m1: {} } }\n', /:6:21: .*spans units/],
    ['a limit that a sound plant passes', '  FLOW-1: { site: { limit: 110 % } }\n', /:6:13: .*would always stand/],
    [
      'more than words of what is fixed',
      '  SYS-1: { site: { action: Call., enabled: false } }\n',
      /all but its action/,
    ],
    ['a re-alarm that would be noise', '  DEW-1: { site: { reAlarmAfter: 59 s } }\n', /:6:20: .*expected 60 s or more/],
    ['no words for an action', '  DEW-1: { site: { action: "" } }\n', /:6:20: entries\.DEW-1\.site\.action/],
    ['a delay below zero', '  DEW-1: { site: { onDelay: -1 s } }\n', /:6:20: .*expected 0 s or more/],
    [
      'a second step that would tell first',
      '  MARGIN-1: { site: { limit: 1 kPa } }\n  MARGIN-2: { units: { m1: { limit: 2 kPa } } }\n',
      /^list\.yaml:6:3: entries\.MARGIN-1: .*first step of a pair.*At m1/,
    ],
    ['a key that is there twice', '  DEW-1: {}\n  DEW-1: {}\n', /^list\.yaml:7:3: .*this is not YAML/],
  ])('is refused for %s', (_, text, expected) => {
    const faults = inEntries(text);
    expect(faults[0]).toMatch(expected);
  });

  it('is refused where it cannot be read', async () => {
    const read = await readAlarmList('/nowhere/list.yaml', 'list.yaml', site);
    expect(read).toMatchObject({
      ok: false,
      fault: [{ line: 1, message: expect.stringContaining('ENOENT') as string }],
    });
  });
});
