/** Case-to-supply resistance of a cold plate, K/W: (T_case − T_supply) ÷ P of that plate (definition; supply-referred). */
export const thermalResistance = (caseC: number, supplyC: number, powerW: number): number => (caseC - supplyC) / powerW;

/** Resistance at another flow: fixed part + convective part × (q/q₀)^−n (Bergman et al., 7th ed., ch. 8: h ~ q^0.8 in turbulent flow). */
export const resistanceAtFlow = (fixed: number, convective: number, shareOfFlow: number, exponent: number): number =>
  fixed + convective * shareOfFlow ** -exponent;
