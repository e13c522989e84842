import { isMadeAhead } from '../../access/made-ahead';
import type { StoredLink } from './stored';

/** How long a link to set a password is good, ms. */
export const linkEndsAfterMs = 86_400_000;

export const linkInForce = ({ endsMs }: Pick<StoredLink, 'endsMs'>, nowMs: number): boolean =>
  nowMs < endsMs && !isMadeAhead(endsMs - linkEndsAfterMs, nowMs);
