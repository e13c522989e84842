import type { PointBinding, TopicPlan } from '../site/compiled-site';

/** What stood at one place of what a topic carried, as far as it was listened to. */
export interface HeardPlace {
  readonly topic: string;
  /** Keys in the JSON object; empty for a bare number. */
  readonly path: readonly string[];
  /** How often something stood there. */
  readonly count: number;
  readonly form: HeardForm;
  /** Of numbers, as they came; NaN where none did. */
  readonly least: number;
  readonly most: number;
  /** Words that stood there, the first dozen. */
  readonly words: readonly string[];
  readonly latest: string;
  /** Unit of measure as the sender writes it beside the value; null: it writes none. */
  readonly unitBeside: string | null;
  /** Every few seconds the newest number, oldest first; NaN where there was none. */
  readonly series: Float64Array;
  /** Where the payload has a time, as far as that could be told. */
  readonly time: HeardTime | null;
}

export type HeardForm = 'number' | 'yesNo' | 'word';

export interface HeardTime {
  readonly path: readonly string[];
  readonly form: NonNullable<TopicPlan['timeForm']>;
}

/** A point that arrives already, with what it was at the same moments as the places. SI. */
export interface KnownSeries {
  readonly holder: string;
  readonly kind: 'hall' | 'unit';
  readonly point: string;
  readonly series: Float64Array;
}

export const pathText = (path: PointBinding['path']): string => path.join(' → ');
