import type { QuantityKind } from '@ebbline/shared/contract/point-table';
import { pointDefinition, pointPattern } from '@ebbline/shared/contract/point-table';
import { displayUnitOf, displayUnitOfUcum, quantityOfUnit } from './display-unit';
import { formatNumber, steadyDecimals } from './format-number';
import { inUnit, spreadInUnit } from './shown-unit';
import { modeWord } from './words';

/** A value ready to print. `number` is a word where the value is one (yes, no, a mode). */
export interface PrintedQuantity {
  readonly number: string;
  readonly uncertainty: string | null;
  readonly unit: string;
  /** Of `number`; below nought it is rounded to tens and more. */
  readonly decimals: number;
}

export interface QuantityOptions {
  /** k = 2, in the unit of measure of the value. */
  readonly uncertainty?: number | null | undefined;
  /** Overrides the decimals that the quantity or the uncertainty would give, in whichever unit of measure. */
  readonly decimals?: number | undefined;
  /** So many decimals more than the quantity has in its table, or fewer, where no uncertainty says them. */
  readonly finer?: number | undefined;
  /** Decimals of the print before, kept while they do. */
  readonly before?: number | undefined;
  /** Point id, where the value is a point's: some ratios are counts. */
  readonly point?: string | undefined;
  /** Below nought a minus stands also where it rounds to nought: of a margin, which is lost from there on. */
  readonly keepsSign?: boolean | undefined;
}

/** A value in the contract's unit of measure (SI or °C) as people read it. */
export function formatQuantity(value: number, quantity: QuantityKind, options: QuantityOptions = {}): PrintedQuantity {
  if (quantity === 'yesNo') return asWord(value > 0 ? 'yes' : 'no');
  if (quantity === 'mode') return asWord(modeWord(value));
  const pattern = options.point === undefined ? undefined : pointPattern(options.point);
  const display = displayUnitOf(quantity, value, pattern);
  const spread = typeof options.uncertainty === 'number' ? spreadInUnit(options.uncertainty, display) : null;
  const decimals =
    options.decimals ??
    (spread === null ? undefined : steadyDecimals(spread, options.before)) ??
    Math.max(0, display.decimals + (options.finer ?? 0));
  return {
    number: formatNumber(inUnit(value, display), decimals, options.keepsSign),
    uncertainty: spread === null || spread <= 0 ? null : formatNumber(spread, decimals),
    unit: display.unit,
    decimals,
  };
}

const asWord = (word: string): PrintedQuantity => ({ number: word, uncertainty: null, unit: '', decimals: 0 });

const isMargin = (point: string): boolean => /margin(Worst)?$/i.test(point);

/** As `formatQuantity` for a point, whose id says what is measured. */
export function formatPoint(id: string, value: number, uncertainty: number | null, before?: number): PrintedQuantity {
  const definition = pointDefinition(id);
  if (definition === undefined) return { number: formatNumber(value, 3), uncertainty: null, unit: '', decimals: 3 };
  return formatQuantity(value, definition.quantity, { uncertainty, point: id, before, keepsSign: isMargin(id) });
}

/**
 * As `formatQuantity` where only a UCUM code came with the value. Gas flows must say that they are free air.
 * @param finer so many decimals more than usual
 */
export function formatByUnit(value: number, ucum: string | null, freeAir = false, finer = 0): PrintedQuantity {
  if (freeAir && ucum === 'm3/s') return formatQuantity(value, 'freeAirFlow', { finer });
  const display = ucum === null ? undefined : displayUnitOfUcum(ucum);
  if (display !== undefined) {
    const { unit } = display;
    const decimals = display.decimals + finer;
    return { number: formatNumber(inUnit(value, display), decimals), uncertainty: null, unit, decimals };
  }
  const quantity = ucum === null ? undefined : quantityOfUnit(ucum);
  const decimals = 2 + finer;
  if (quantity === undefined)
    return {
      number: formatNumber(value, decimals),
      uncertainty: null,
      unit: ucum === '1' ? '' : (ucum ?? ''),
      decimals,
    };
  return formatQuantity(value, quantity, { finer });
}

/** One line of text, number and unit held together. */
export function inWords(printed: PrintedQuantity): string {
  const spread = printed.uncertainty === null ? '' : ` ± ${printed.uncertainty}`;
  return `${printed.number}${spread}${printed.unit === '' ? '' : `\u00a0${printed.unit}`}`;
}
