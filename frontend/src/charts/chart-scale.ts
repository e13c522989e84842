import type { QuantityKind } from '@ebbline/shared/contract/point-table';
import { modes } from '@ebbline/shared/contract/http-api';
import type { DisplayUnit } from '../text/display-unit';
import { formatNumber } from '../text/format-number';
import { modeWord } from '../text/words';

/** How the values of a chart are written. */
export interface ChartScale {
  readonly unit: string;
  /** In place of numbers, by value; null where the values are numbers. */
  readonly words: readonly string[] | null;
  /** Fixed ends of the axis; null where the values choose them. */
  readonly range: readonly [number, number] | null;
  readonly say: (value: number) => string;
}

const ofWords = (words: readonly string[], say: ChartScale['say']): ChartScale => ({
  unit: '',
  words,
  range: [-0.3, words.length - 0.7],
  say,
});

/** A mean of words is no word: of yes and no it is the share of yes, of modes it is said as several. */
export function chartScale(quantity: QuantityKind | undefined, display: DisplayUnit): ChartScale {
  if (quantity === 'yesNo')
    return ofWords(['no', 'yes'], (value) => {
      if (value === 0) return 'no';
      return value === 1 ? 'yes' : `yes ${formatNumber(value * 100, 0)} % of the time`;
    });
  if (quantity === 'mode')
    return ofWords(
      modes.map((_, index) => modeWord(index)),
      (value) => (Number.isInteger(value) ? modeWord(value) : 'several'),
    );
  const unit = display.unit === '' ? '' : `\u00a0${display.unit}`;
  return {
    unit: display.unit,
    words: null,
    range: null,
    say: (value) => `${formatNumber(value, Math.min(6, display.decimals + 1))}${unit}`,
  };
}
