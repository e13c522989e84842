import type { ListedSetting } from '@ebbline/shared/contract/alarm-list';
import type { AlarmSettings } from '@ebbline/shared/contract/alarm-settings';
import type { EntryId } from '../../evaluation/alarm-rules/entry-ids';
import { scopesAuthorised } from '../../evaluation/alarm-rules/settings/scopes-of';
import { differingMembers, toSettings } from '../../evaluation/alarm-rules/settings/to-settings';
import type { PlaceLimits } from './places';

/** The settings of an entry at the site, then at halls and units where they are others than around them. */
export function listedSettings(id: EntryId, places: readonly PlaceLimits[]): readonly ListedSetting[] {
  const scopes = scopesAuthorised(id);
  const told = places.map((place) => ({
    ...place,
    authorised: toSettings(id, place.authorised.get(id)),
    running: toSettings(id, place.running.get(id)),
  }));
  return told.flatMap(({ scope, parent, authorised, running }) => {
    const around = parent === null ? null : told[parent];
    const listed =
      around === null ||
      around === undefined ||
      (scopes.includes(scope.kind) && !(same(around.authorised, authorised) && same(around.running, running)));
    return listed ? [{ scope, authorised, running, differs: differingMembers(authorised, running) }] : [];
  });
}

const same = (first: AlarmSettings, second: AlarmSettings): boolean => differingMembers(first, second).length === 0;
