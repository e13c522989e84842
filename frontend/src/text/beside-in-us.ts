import { formatNumber } from './format-number';
import { inUnit, spreadInUnit } from './shown-unit';
import { unitSystem } from './unit-system';
import { usOfWritten } from './us-units';

const number = '[-−]?\\d[\\d\\u202f]*(?:\\.\\d+)?';
/** The longer names first: `kPa absolute` is no `kPa`. */
const names = Object.keys(usOfWritten)
  .sort((one, other) => other.length - one.length)
  .map((name) => name.replace('/', '\\/'))
  .join('|');
const written = new RegExp(`(${number})(?: (±|to|and) (${number}))?[ \\u00a0](${names})(?![\\w/·²³])`, 'g');

const valueOf = (text: string): number => Number(text.replace('−', '-').replaceAll('\u202f', ''));

/** Decimals with which no digit that was written loses its meaning, and none is invented that reads as sure. */
function decimalsFor(text: string, factor: number): number {
  const step = 10 ** -(text.split('.')[1]?.length ?? 0);
  return Math.max(0, Math.ceil(-Math.log10(step * factor) - 0.2));
}

/**
 * A sentence of the server or of the alarm list, which stands as it was written and approved; who reads US units has
 * each figure in them beside it: `rose by 5 kPa (0.7 psi)`. What follows a ± is a spread and knows no nought.
 */
export function besideInUs(sentence: string): string {
  if (unitSystem() === 'metric') return sentence;
  return sentence.replace(
    written,
    (whole: string, first: string, word: string | undefined, second: string | undefined, name: string) => {
      const unit = usOfWritten[name];
      if (unit === undefined) return whole;
      const say = (text: string, shown: number): string => formatNumber(shown, decimalsFor(text, unit.factor));
      const head = say(first, inUnit(valueOf(first), unit));
      const tail =
        second === undefined
          ? ''
          : ` ${word ?? ''} ${say(second, word === '±' ? spreadInUnit(valueOf(second), unit) : inUnit(valueOf(second), unit))}`;
      return `${whole} (${head}${tail}\u00a0${unit.unit})`;
    },
  );
}
