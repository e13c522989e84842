import { fail, ok, type Failure, type Result } from '@ebbline/shared/errors/result';
import { cellsOfRule } from '../../alarm-rules/rule-memory';

/** What is kept in a file: names as JSON, and numbers. */
export interface Learnt {
  readonly head: string;
  readonly numbers: Float64Array;
}

export type ColumnHead = readonly [path: string, cells: number];

/** What was remembered at a moment, by names. */
export interface MemoryImage {
  readonly savedMs: number;
  /** Ids of the units, and names of the alarms whose rules keep anything. */
  readonly units: readonly string[];
  readonly alarms: readonly string[];
  /** Branches, plates and places of each unit, in their order: what is remembered by place in them is of use to the same ones only. */
  readonly parts: readonly (readonly string[])[];
  /** Columns by unit: path and cells a unit; the numbers follow in this order, unit by unit, then those of the alarms, then those of the halls. */
  readonly columns: readonly ColumnHead[];
  /** Ids of the halls, and columns by hall. None in an image of the form before, which knew none. */
  readonly halls: readonly string[];
  readonly hallColumns: readonly ColumnHead[];
  readonly numbers: Float64Array;
}

/** Counts up with every change of what head and numbers mean. */
const form = 3;
/** The form before, without halls: still read. */
const formBefore = 2;

export const toLearnt = ({ numbers, ...head }: MemoryImage): Learnt => ({
  head: JSON.stringify({ form, ...head }),
  numbers,
});

/** The way back; refuses whole what is of another form, or does not fit together, so that nothing is half remembered. */
export function fromLearnt({ head: text, numbers }: Learnt): Result<MemoryImage, Failure<'MEMORY_MALFORMED'>> {
  const head = headOf(text);
  if (head === null) return malformed('its head can not be read');
  const { alarms, columns, hallColumns, halls, units } = head;
  const expected = cellsOf(columns) * units.length + alarms.length * cellsOfRule + cellsOf(hallColumns) * halls.length;
  if (numbers.length !== expected) return malformed('its numbers are not those of its head');
  return ok({ ...head, numbers });
}

/** Cells of one unit, or one hall. */
const cellsOf = (columns: readonly ColumnHead[]): number => columns.reduce((sum, [, cells]) => sum + cells, 0);

function headOf(text: string): Omit<MemoryImage, 'numbers'> | null {
  let parsed: unknown;
  try {
    parsed = JSON.parse(text);
  } catch {
    return null;
  }
  if (typeof parsed !== 'object' || parsed === null) return null;
  const head = parsed as Record<string, unknown>;
  const { savedMs, units, alarms, parts, columns } = head;
  const { halls, hallColumns } = head.form === formBefore ? { halls: [], hallColumns: [] } : head;
  const isKnown = head.form === form || head.form === formBefore;
  const isRead = isKnown && typeof savedMs === 'number' && isTexts(units) && isTexts(alarms) && isTexts(halls);
  return isRead && isParts(parts) && parts.length === units.length && isColumns(columns) && isColumns(hallColumns)
    ? { savedMs, units, alarms, parts, columns, halls, hallColumns }
    : null;
}

const isTexts = (value: unknown): value is readonly string[] =>
  Array.isArray(value) && value.every((one) => typeof one === 'string');

const isParts = (value: unknown): value is MemoryImage['parts'] => Array.isArray(value) && value.every(isTexts);

const isColumns = (value: unknown): value is MemoryImage['columns'] =>
  Array.isArray(value) &&
  value.every((one: unknown) => Array.isArray(one) && typeof one[0] === 'string' && isCount(one[1]));

const isCount = (value: unknown): boolean => Number.isInteger(value) && (value as number) >= 0;

const malformed = (why: string): Result<never, Failure<'MEMORY_MALFORMED'>> =>
  fail({
    code: 'MEMORY_MALFORMED',
    message: `what was remembered before the restart can not be used: ${why}; means of a day and usual values are learnt anew`,
  });
