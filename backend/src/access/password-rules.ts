import { nameKey } from './name-key';

/**
 * A password must not be among those that are guessed first: that is all that is asked of what it is made of (NIST SP 800-63B
 * section 3.1.1.2; ASVS 5.0 V6.2.4, V6.2.5, V6.2.11). How soon it is guessed is estimated from lists of leaked passwords, rows of
 * keys, dates and repetition, by whoever calls. The bound is ours: beyond what guessing tries at a sign-in that is slowed down.
 */
export const fewestGuesses = 1e9;

/** So many characters are looked at, as the estimate takes the longer the more it finds; a weak beginning makes a long one no better. */
export const lookedAtCharacters = 64;

/** What anyone would try here first. */
const placeWords = ['ebbline', 'cooling', 'coolant', 'datahall', 'operator', 'engineer', 'viewer', 'admin', 'password'];

/** Words that are worth nothing in the password of this person. */
export const wordsKnownOf = (name: string): readonly string[] => [
  ...placeWords,
  nameKey(name),
  nameKey(name).replaceAll(' ', ''),
  ...nameKey(name)
    .split(/[\s._-]+/u)
    .filter((part) => part.length > 2),
];

export const isGuessedFirst = (guesses: number): boolean => guesses < fewestGuesses;
