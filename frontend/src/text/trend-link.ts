/** One point of one unit, as an address names it. */
export interface TrendName {
  readonly unit: string;
  readonly point: string;
}

/** Address of the Trends screen with some points. Ids hold neither a comma nor a colon. */
export function trendLink(points: readonly TrendName[]): { name: 'trends'; query: { points: string } } {
  return { name: 'trends', query: { points: points.map(({ unit, point }) => `${unit}:${point}`).join(',') } };
}
