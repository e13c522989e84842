/** A piece of an equation as it is set: on the line, below it or above it. */
export interface EquationPart {
  readonly set: 'line' | 'sub' | 'sup';
  readonly text: string;
}

/** An index after `_`, letters with a comma or not; an exponent after `^`, in brackets or a single sign. */
const raised = /_(?<sub>[\p{L}∞]+(?:,\p{L}+)?)|\^(?:\((?<inside>(?:[^()]|\([^()]*\))*)\)|(?<sup>−?[\p{L}\d]+))/gu;

/** What stands before and behind the marks `_` and `^` of an equation in plain text, in order. */
export function equationParts(formula: string): readonly EquationPart[] {
  const parts: EquationPart[] = [];
  let from = 0;
  for (const { index, 0: whole, groups } of formula.matchAll(raised)) {
    if (index > from) parts.push({ set: 'line', text: formula.slice(from, index) });
    const below = groups?.['sub'];
    parts.push(
      below === undefined
        ? { set: 'sup', text: groups?.['inside'] ?? groups?.['sup'] ?? '' }
        : { set: 'sub', text: below },
    );
    from = index + whole.length;
  }
  if (from < formula.length) parts.push({ set: 'line', text: formula.slice(from) });
  return parts;
}
