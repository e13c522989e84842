const mostBuckets = 600;
const leastBucketMs = 1000;

/** Into how many buckets a span is cut: as many as a picture shows, none shorter than a second. @param lengthMs more than 0 */
export const trendBuckets = (lengthMs: number): number =>
  Math.max(1, Math.min(mostBuckets, Math.floor(lengthMs / leastBucketMs)));
