/** One line of an uncertainty budget (GUM, JCGM 100:2008, table H.1): what it comes from and the standard uncertainty that it brings. */
export interface BudgetPart {
  /** A point's id, or the words for a figure of the site file or a model. */
  readonly from: string;
  /** |∂f/∂x|·u(x), in the unit of measure of the value; below 0 where a correlation takes it away. */
  readonly contribution: number;
  /** Infinity where it rests on no count of observations. */
  readonly degreesOfFreedom: number;
}

/**
 * Collects the parts of derived values while somebody asks for them; else it does not exist. One `derive` may write many
 * values, one a branch or plate: what was added before a value is written belongs to that value.
 */
export class UncertaintyBudget {
  private open: BudgetPart[] = [];
  private readonly closed = new Map<number, readonly BudgetPart[]>();

  add(from: string, contribution: number, degreesOfFreedom = Infinity): void {
    this.open.push({ from, contribution: Math.abs(contribution), degreesOfFreedom });
  }

  /** What two inputs have in common, as variance: 2 r c₁ c₂ u₁ u₂ (GUM eq. 16). It stands as its root, with its sign. */
  addCovariance(from: string, variance: number): void {
    if (variance === 0) return;
    const contribution = Math.sign(variance) * Math.sqrt(Math.abs(variance));
    this.open.push({ from, contribution, degreesOfFreedom: Infinity });
  }

  /** What was added since the last value belongs to one in another unit of measure, so many times as large. */
  scale(factor: number): void {
    this.open = this.open.map((one) => ({ ...one, contribution: one.contribution * factor }));
  }

  /** The value of a slot was written: what was added since the last one belongs to it. */
  close(slot: number): void {
    this.closed.set(slot, this.open);
    this.open = [];
  }

  partsOf(slot: number): readonly BudgetPart[] {
    return this.closed.get(slot) ?? [];
  }
}

/** Sum of the squares of the parts, each with its sign; NaN where one is not known. */
export const varianceOf = (parts: readonly BudgetPart[]): number =>
  parts.reduce((sum, { contribution }) => sum + contribution * Math.abs(contribution), 0);

/** Whatever may hold a budget: the frame of a unit, or nothing but one. */
export interface BudgetHolder {
  readonly budget: UncertaintyBudget | null;
}

export const noBudget: BudgetHolder = { budget: null };

/**
 * Hands a contribution on, and writes it down where a budget is asked for: `combine2(part(frame, 'loop.flow', a), part(…))`.
 * A derived value whose uncertainty holds a contribution that went through here can say what it consists of.
 */
export function part({ budget }: BudgetHolder, from: string, contribution: number, degreesOfFreedom?: number): number {
  if (budget !== null) budget.add(from, contribution, degreesOfFreedom);
  return contribution;
}

/** The same for what two inputs have in common: a variance 2 r c₁ c₂ u₁ u₂, to be added to the sum of squares. */
export function covariance({ budget }: BudgetHolder, from: string, variance: number): number {
  if (budget !== null) budget.addCovariance(from, variance);
  return variance;
}
