import type { HeardPlace } from './heard-place';
import type { NamedPattern } from './pattern-names';
import { nothing, speaksFor, type Weighed } from './reasons';
import { sayYesOrNo } from './yes-words';

/** Whether what stands there has the form of the point: a number, yes or no, or a word. Null: it has not. */
export function weighForm(place: HeardPlace, { definition: { quantity } }: NamedPattern): Weighed | null {
  const { form, least, most, words } = place;
  const zeroOrOne = form === 'number' && [least, most].every((value) => value === 0 || value === 1);
  switch (quantity) {
    case 'yesNo':
      if (form === 'yesNo') return speaksFor(1, 'it says yes or no');
      if (form === 'word' && sayYesOrNo(words)) return speaksFor(1, `it says ${words.join(' or ')}`);
      return zeroOrOne ? speaksFor(0.5, 'it was 0 or 1 only') : null;
    case 'mode':
      return form === 'word' ? speaksFor(0.5, `it says ${words.slice(0, 3).join(', ')}`) : null;
    default:
      return form === 'number' ? nothing : null;
  }
}
