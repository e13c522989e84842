import type { CompiledUnit } from '../../site/compiled-site';

/**
 * From where a unit's vapour pressure comes: that of water also where glycol is in it. By Raoult's law the mixture's is lower, so water's
 * is an upper bound; kept, as a boiling margin is then on the safe side.
 */
export const vapourPressureSource = ({ fluid }: CompiledUnit): string =>
  fluid === undefined || fluid.kind === 'water'
    ? 'p_v of water, IAPWS R7-97'
    : 'p_v of water, IAPWS R7-97: an upper bound for glycol in water (Raoult), by which a boiling margin is on the safe side';

/** The same where dry gas is what is sought: the bound makes it less. */
export const dryGasSource = (unit: CompiledUnit): string =>
  unit.fluid === undefined || unit.fluid.kind === 'water'
    ? vapourPressureSource(unit)
    : 'p_v of water, IAPWS R7-97: an upper bound for glycol in water (Raoult), so that vapour comes out too large and dry gas too small';
