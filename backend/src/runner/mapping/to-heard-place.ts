import type { HeardPlaceShown } from '@ebbline/shared/contract/mapping';
import type { HeardPlace } from '../../evaluation/mapping/heard-place';
import type { RankedPlace } from '../../evaluation/mapping/settle-claims';
import { siteLine } from '../../evaluation/mapping/site-line';

/** A place and what it could be, in the words of the contract. */
export const toHeardPlace = ({ place, proposals }: RankedPlace): HeardPlaceShown => ({
  ...{ topic: place.topic, path: [...place.path], count: place.count, latest: place.latest, seen: seenOf(place) },
  proposals: proposals.map((proposal) => {
    const { kind, holder, point, title, grade, reasons } = proposal;
    const { text, needs } = siteLine(place, proposal);
    return { kind, holder, point, title, grade, reasons: [...reasons], line: text, needs: [...needs] };
  }),
});

const shown = (value: number): string => String(Number(value.toPrecision(5)));

function seenOf({ form, least, most, words }: HeardPlace): string {
  if (form !== 'number') return words.join(', ');
  return least === most ? shown(least) : `${shown(least)} to ${shown(most)}`;
}
