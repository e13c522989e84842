/** 0 °C in K (SI brochure, 9th edition, 2.3.1). */
export const zeroCelsiusK = 273.15;

/** Standard gravity, m/s² (3rd CGPM, 1901). Local gravity differs by up to 0.3 %. */
export const standardGravityMPerS2 = 9.80665;

/** Standard atmosphere, Pa (10th CGPM, 1954). */
export const standardAtmospherePa = 101_325;
