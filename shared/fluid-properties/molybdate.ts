/** Molar masses, g/mol (IUPAC): Mo 95.95, MoO₄ 159.95. */
const molarMassMo = 95.95;
const molarMassMoO4 = 159.95;

/** Concentration counted as Mo → the same counted as MoO₄ (× 1.667), in the unit of the input. */
export const molybdateOfMolybdenum = (asMo: number): number => (asMo * molarMassMoO4) / molarMassMo;

/** Concentration counted as MoO₄ → the same counted as Mo. */
export const molybdenumOfMolybdate = (asMoO4: number): number => (asMoO4 * molarMassMo) / molarMassMoO4;
