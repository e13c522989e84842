import type { LineMark } from '../../charts/lane';
import type { HeatPair } from './heat-pairs';
import { heatPairs } from './heat-pairs';
import type { Compared } from './line-of';

/** Heat and power of what is held beside those of a unit, where it has both. */
export function heatBeside(
  unit: string,
  compared: readonly Compared[],
): readonly { readonly mark: LineMark; readonly words: string; readonly pairs: readonly HeatPair[] }[] {
  return compared.flatMap(({ columns, comparison }) => {
    const names = ['heatRemoved', 'chipPower'].flatMap((point) => comparison.of({ unit, point }) ?? []);
    const [found] = heatPairs(names, columns);
    return found === undefined || found.pairs.length === 0
      ? []
      : [{ mark: comparison.mark, words: comparison.words, pairs: found.pairs }];
  });
}
