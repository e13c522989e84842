import type { Comparison } from './compared';

type Problems = ReadonlyMap<string, string>;

/** Why a line is empty whose history could not be read, in words, by the key of the line. @param own by `unit:point`, as those beside are */
export const failuresOf = (
  own: Problems,
  compared: readonly { readonly comparison: Comparison; readonly problems: Problems }[],
): Problems =>
  new Map([
    ...own,
    ...compared.flatMap(({ comparison, problems }) =>
      [...problems].map(([key, words]) => [`${key}:${comparison.mark}`, words] as const),
    ),
  ]);
