import { catalogue } from '../../evaluation/alarm-rules/catalogue/catalogue';
import { entryIds } from '../../evaluation/alarm-rules/entry-ids';

/** Title of a catalogue entry; its id where the catalogue has it no more. */
export function titleOf(entry: string): string {
  const known = entryIds.find((id) => id === entry);
  return known === undefined ? entry : catalogue[known].title;
}
