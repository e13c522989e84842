/** 30 samples; the last ten come from a mean that rose by one standard deviation (Montgomery, Introduction to Statistical Quality Control, table 9.1). */
export const montgomeryData = [
  9.45, 7.99, 9.29, 11.66, 12.16, 10.18, 8.04, 11.46, 9.2, 10.34, 9.03, 11.47, 10.51, 9.4, 10.08, 9.37, 10.62, 10.31,
  8.52, 10.84, 10.9, 9.33, 12.29, 11.5, 10.6, 11.08, 10.38, 11.62, 11.31, 10.52,
];
