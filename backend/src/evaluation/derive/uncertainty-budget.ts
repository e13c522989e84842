/** One line of an uncertainty budget (GUM, JCGM 100:2008, table H.1): what it comes from and the standard uncertainty that it brings. */
export interface BudgetPart {
  /** A point's id, or the words for a figure of the site file or a model. */
  readonly from: string;
  /** |∂f/∂x|·u(x), in the unit of measure of the value. */
  readonly contribution: number;
}

/** Collects the parts of one derived value while somebody asks for them; else it does not exist. */
export class UncertaintyBudget {
  readonly parts: BudgetPart[] = [];

  add(from: string, contribution: number): void {
    this.parts.push({ from, contribution: Math.abs(contribution) });
  }
}

/**
 * Hands a contribution on, and writes it down where a budget is asked for: `combine2(part(frame, 'loop.flow', a), part(…))`.
 * A derived value whose uncertainty holds a contribution that went through here can say what it consists of.
 */
export function part(frame: { readonly budget: UncertaintyBudget | null }, from: string, contribution: number): number {
  if (frame.budget !== null) frame.budget.add(from, contribution);
  return contribution;
}
