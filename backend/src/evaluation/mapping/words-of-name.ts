import { conceptOf, inTwo } from './name-words';

/** `SupTemp_degC/TT101` → sup, temp, deg, c, tt, 101: in lower case, apart where letters, digits and capitals change. */
export const wordsOf = (text: string): readonly string[] =>
  text
    .replace(/pH/g, '_ph_')
    .replace(/([a-z0-9])([A-Z])/g, '$1 $2')
    .replace(/([A-Z]+)([A-Z][a-z])/g, '$1 $2')
    .replace(/([A-Za-z])(\d)/g, '$1 $2')
    .replace(/(\d)([A-Za-z])/g, '$1 $2')
    .toLowerCase()
    .split(/[^\p{L}\p{N}°%µμ]+/u)
    .filter((word) => word !== '');

/** What the words of a name speak of, each once: `sup`, `temp` → supply, temperature. */
export function conceptsOf(words: readonly string[]): ReadonlySet<string> {
  const found = new Set<string>();
  for (const word of words) {
    const one = conceptOf(word);
    if (one !== undefined) found.add(one);
    else for (const part of inTwo(word) ?? []) found.add(part);
  }
  return found;
}

/** Keys that only say that a value stands there. */
const saysNothing = /^(?:values?|val|v|pv|data|reading|measurement|metrics?|payload|fields?|points?|status)$/i;

/** The part of a place that tells what stands there: the keys, and where these say nothing the last two levels of the topic. */
export function nameOf(topic: string, path: readonly string[]): string {
  const keys = path.filter((key) => !saysNothing.test(key));
  return (keys.length === 0 ? topic.split('/').slice(-2) : keys.slice(-3)).join('/');
}

/** All parts of a place by which a unit, a rack or a chip may be called: `cdu-03` → cdu03, cdu3; so also single words. */
export function callsOf(topic: string, path: readonly string[]): ReadonlySet<string> {
  const calls = new Set<string>();
  for (const level of [...topic.split('/'), ...path]) {
    const words = wordsOf(level);
    words.forEach((word, i) => {
      for (const call of [word, i === 0 ? '' : `${words[i - 1] ?? ''}${word}`])
        if (call !== '') calls.add(plainCall(call));
    });
    calls.add(plainCall(words.join('')));
  }
  return calls;
}

/** Zeros that only fill up do not count: `cdu03` is `cdu3`. */
export const plainCall = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]/gu, '')
    .replace(/(^|\D)0+(\d)/g, '$1$2');
