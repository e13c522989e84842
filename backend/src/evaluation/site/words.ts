import { modes } from '@ebbline/shared/contract/http-api';
import type { QuantityKind } from '@ebbline/shared/contract/point-table';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';

export type Words = ReadonlyMap<string, number>;

const yesNoMeanings: Words = new Map([
  ['yes', 1],
  ['true', 1],
  ['no', 0],
  ['false', 0],
]);
const modeMeanings: Words = new Map(modes.map((mode, i) => [mode, i]));

const yesNoDefault: Words = new Map([
  ['true', 1],
  ['1', 1],
  ['false', 0],
  ['0', 0],
]);

/**
 * What a sender's word means as a number: yes = 1, no = 0, a mode = its place in the list of modes.
 * Null for quantities that are numbers already.
 */
export function compileWords(
  written: Readonly<Record<string, string>> | undefined,
  quantity: QuantityKind,
): Result<Words | null, { readonly word: string | null; readonly message: string }> {
  const meanings = quantity === 'yesNo' ? yesNoMeanings : quantity === 'mode' ? modeMeanings : null;
  if (meanings === null) {
    if (written === undefined) return ok(null);
    return fail({ word: null, message: 'words go with yes/no points and mode only; take them out' });
  }
  if (written === undefined) return ok(quantity === 'yesNo' ? yesNoDefault : modeMeanings);
  const words = new Map<string, number>();
  for (const [word, meaning] of Object.entries(written)) {
    const number = meanings.get(meaning);
    if (number === undefined)
      return fail({
        word,
        message: `"${meaning}" means nothing here; expected one of ${[...meanings.keys()].join(', ')}`,
      });
    words.set(word, number);
  }
  return ok(words);
}
