export interface SampleSummary {
  readonly mean: number;
  readonly standardDeviation: number;
  readonly count: number;
}

export interface WelchTest {
  readonly t: number;
  readonly degrees: number;
}

/** Whether two samples have one mean, variances unequal: t and its degrees of freedom (Welch 1947; 40 CFR 1065.602(f)). */
export function welchTest(one: SampleSummary, other: SampleSummary): WelchTest {
  const a = one.standardDeviation ** 2 / one.count;
  const b = other.standardDeviation ** 2 / other.count;
  return {
    t: Math.abs(one.mean - other.mean) / Math.sqrt(a + b),
    degrees: (a + b) ** 2 / (a ** 2 / (one.count - 1) + b ** 2 / (other.count - 1)),
  };
}
