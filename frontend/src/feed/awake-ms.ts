/** So much more has gone by on the wall than on the monotonic clock only where the machine slept, or its time was set on. ms */
const sleptMs = 1000;

/**
 * A monotonic clock that goes on while the machine sleeps, ms: `performance.now()` stands still then in some browsers, and what
 * is shown would be hours older than it says. Time that is set back changes nothing.
 */
export function awakeClock(
  monotonicMs: () => number = () => performance.now(),
  wallMs: () => number = () => Date.now(),
): () => number {
  let [monotonic, wall] = [monotonicMs(), wallMs()];
  let slept = 0;
  return () => {
    const [monotonicNow, wallNow] = [monotonicMs(), wallMs()];
    const more = wallNow - wall - Math.max(0, monotonicNow - monotonic);
    if (more > sleptMs) slept += more;
    [monotonic, wall] = [monotonicNow, wallNow];
    return monotonicNow + slept;
  };
}

/** The one of this page. */
export const awakeMs = awakeClock();
