import type { Site } from '@ebbline/shared/contract/http-api';

type Shape = Site['units'][number]['shape'];
type Swap = readonly [from: string, to: string];

/**
 * The contract names tanks as plant shape a has them. In b the supply comes from whichever tank discharges, and the
 * vacuum side is a receiver; in c the pump draws from a vacuum reservoir and feeds a header. The first that fits is taken.
 */
const swaps: { readonly [S in Shape]: readonly Swap[] } = {
  a: [],
  b: [
    ['supply tank, water gained', 'both tanks, water gained'],
    ['supply tank gains', 'both tanks gain'],
    ['supply tank', 'discharging tank'],
    ['separator', 'vacuum receiver'],
  ],
  c: [
    ['both tanks', 'the reservoir'],
    ['supply tank', 'supply header'],
    ['separator', 'vacuum reservoir'],
  ],
};

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** A text of the contract in the words of the unit's own plant. */
export function shapeWords(text: string, shape: Shape | undefined): string {
  return swaps[shape ?? 'a'].reduce(
    (said, [from, to]) => said.replaceAll(capital(from), capital(to)).replaceAll(from, to),
    text,
  );
}
