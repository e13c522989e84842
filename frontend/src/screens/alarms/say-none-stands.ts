import { sayHeldAside } from '../../text/say-held-aside';

/**
 * What an empty list of alarms means: calm, or only that nothing was judged or is told.
 * @param unheard units of which nothing has come since the program started
 * @param aside alarms that are set aside while their condition holds
 */
export function sayNoneStands(unheard: number, aside = 0): string {
  const ofAside = aside === 0 ? '' : `${sayHeldAside(aside)}.`;
  if (unheard === 0) return aside === 0 ? 'Nothing needs a person.' : `No alarm is told, but ${ofAside}`;
  const unknown = `No alarm stands, but nothing has come from ${unheard === 1 ? '1 unit' : `${unheard} units`} since the program started: of ${unheard === 1 ? 'it' : 'them'} nothing is known.`;
  return aside === 0 ? unknown : `${unknown} And ${ofAside}`;
}
