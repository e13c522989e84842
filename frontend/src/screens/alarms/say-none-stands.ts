/**
 * What an empty list of alarms means: calm, or only that nothing was judged.
 * @param unheard units of which nothing has come since the program started
 */
export const sayNoneStands = (unheard: number): string =>
  unheard === 0
    ? 'Nothing needs a person.'
    : `No alarm stands, but nothing has come from ${unheard === 1 ? '1 unit' : `${unheard} units`} since the program started: of ${unheard === 1 ? 'it' : 'them'} nothing is known.`;
