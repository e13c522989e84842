import { alarmListingSchema } from '@ebbline/shared/contract/alarm-list';
import { describe, expect, it } from 'vitest';
import { AlarmListController } from '../../../../../backend/src/connections/http-api/alarm-list.controller';
import type { WebResponse } from '../../../../../backend/src/connections/http-api/web-types';
import type { AlarmListDesk } from '../../../../../backend/src/ports/alarm-list';
import type { Identity } from '../../../../../backend/src/ports/identity';
import { aListing, anEntry, marginSettings } from '../../../../screens/fixtures/alarm-management';

const listing = aListing([
  anEntry('MARGIN-1', {
    owner: 'water engineer',
    settings: [
      { scope: { kind: 'site' }, authorised: marginSettings, running: marginSettings, differs: [] },
      {
        scope: { kind: 'unit', id: 'e7' },
        authorised: marginSettings,
        running: { ...marginSettings, limit: -500 },
        differs: ['limit'],
      },
    ],
  }),
  anEntry('AIR-1', {}),
]);

/** What a browser is handed for an export. */
function exported(format: string): { type: string; name: string; text: string } {
  const asked: unknown[] = [];
  const desk = { list: (query: unknown) => (asked.push(query), listing) } as unknown as AlarmListDesk;
  const got = { type: '', name: '', text: '' };
  const response = {
    set: (_: string, value: string) => ((got.name = value), response),
    type: (value: string) => ((got.type = value), response),
    send: (text: string) => ((got.text = text), response),
  } as unknown as WebResponse;
  new AlarmListController(desk, {} as Identity).export({ format }, response);
  // All of it, however the list on the screen was narrowed.
  expect(asked).toEqual([{}]);
  return got;
}

describe('the alarm list taken along as JSON', () => {
  const { name, text, type } = exported('json');

  it('is the whole list with what is authorised and what runs at each place, as the contract has it', () => {
    expect(alarmListingSchema.parse(JSON.parse(text))).toEqual(listing);
    const [margin] = alarmListingSchema.parse(JSON.parse(text)).entries;
    expect(margin?.settings.map(({ scope, running, differs }) => [scope.kind, running.limit, differs])).toEqual([
      ['site', 5000, []],
      ['unit', -500, ['limit']],
    ]);
  });

  it('is a file for people to read: named after its day, and a line a member', () => {
    expect([type, name]).toEqual([
      'application/json',
      `attachment; filename="alarm-list-${listing.time.slice(0, 10)}.json"`,
    ]);
    expect(text.split('\n').length).toBeGreaterThan(20);
    expect(exported('csv').name).toContain('.csv"');
  });
});
