import { unitEntries } from '../alarm-rules/catalogue/catalogue';
import { resolveLimits, type ResolvedLimits } from '../alarm-rules/resolve-limits';
import type { CompiledUnit } from '../site/compiled-site';

/** One object for all units that leave an entry as it ships: thousands of copies would be read from memory each second. */
const asShipped: readonly ResolvedLimits[] = unitEntries.map(({ defaults }) => resolveLimits(defaults, undefined));

/** How each entry is set at a unit, in the order of `unitEntries`. */
export function limitsOfUnit({ limits }: CompiledUnit): readonly ResolvedLimits[] {
  if (limits.size === 0) return asShipped;
  return unitEntries.map(({ id, defaults }, place) => {
    const own = limits.get(id);
    return own === undefined ? (asShipped[place] as ResolvedLimits) : resolveLimits(defaults, own);
  });
}
