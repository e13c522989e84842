import { ZxcvbnFactory } from '@zxcvbn-ts/core';
import { adjacencyGraphs, dictionary } from '@zxcvbn-ts/language-common';
import { isGuessedFirst, lookedAtCharacters, wordsKnownOf } from '../../access/password-rules';

/** Made when a password is first set: it takes a tenth of a second, and most starts never need it. */
let estimator: ZxcvbnFactory | null = null;

/** Whether a password is among those that are guessed first, for the person of this name. */
export function isCommonPassword(password: string, name: string): boolean {
  estimator ??= new ZxcvbnFactory({ dictionary, graphs: adjacencyGraphs });
  const { guesses } = estimator.check(password.slice(0, lookedAtCharacters), [...wordsKnownOf(name)]);
  return isGuessedFirst(guesses);
}
