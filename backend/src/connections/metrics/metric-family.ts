/** Names and values that tell the series of a family apart; few and known beforehand, never what a client sent. */
export type Labels = Readonly<Record<string, string>>;

export interface Figure {
  readonly labels?: Labels;
  readonly value: number;
}

/** How many were at most each bound. */
export interface Distribution {
  readonly bounds: readonly number[];
  /** One more than bounds: the last is the number of all. */
  cumulative(): readonly number[];
  readonly count: number;
  readonly sum: number;
}

interface FamilyBase {
  readonly name: string;
  readonly help: string;
  /** A base unit; the name then ends with it (OpenMetrics 1.0, “Units and Base Units”). */
  readonly unit?: 'seconds' | 'bytes';
}

/** A family of OpenMetrics 1.0, by its type. */
export type MetricFamily =
  | (FamilyBase & { readonly type: 'counter' | 'gauge'; readonly figures: readonly Figure[] })
  | (FamilyBase & { readonly type: 'histogram'; readonly distribution: Distribution })
  | (FamilyBase & {
      readonly type: 'summary';
      readonly quantiles: readonly { readonly quantile: number; readonly value: number }[];
    })
  | (FamilyBase & { readonly type: 'info'; readonly labels: Labels });

export const counter = (name: string, help: string, figures: number | readonly Figure[]): MetricFamily => ({
  type: 'counter',
  name,
  help,
  ...unitOf(name),
  figures: figuresOf(figures),
});

export const gauge = (name: string, help: string, figures: number | readonly Figure[]): MetricFamily => ({
  type: 'gauge',
  name,
  help,
  ...unitOf(name),
  figures: figuresOf(figures),
});

export const histogram = (name: string, help: string, distribution: Distribution): MetricFamily => ({
  type: 'histogram',
  name,
  help,
  ...unitOf(name),
  distribution,
});

const figuresOf = (figures: number | readonly Figure[]): readonly Figure[] =>
  typeof figures === 'number' ? [{ value: figures }] : figures;

function unitOf(name: string): Pick<FamilyBase, 'unit'> {
  const unit = (['seconds', 'bytes'] as const).find((one) => name.endsWith(`_${one}`));
  return unit === undefined ? {} : { unit };
}
