/**
 * Under `npm start` a shell stands between npm and this program. npm hands SIGTERM and SIGINT on to that shell
 * only: SIGTERM ends it, and all that is seen of it here is another parent. (On SIGINT some shells wait for us
 * and nothing is seen at all; a terminal sends Ctrl-C to us as well, so there it does not matter.)
 */

const LOOK_EVERY_MS = 250;

/** Calls `act` once the parent of a program that npm started is gone; a program started directly may outlive its parent. */
export function whenParentEnds(act) {
  if (process.env.npm_lifecycle_event === undefined) return;
  const parent = process.ppid;
  const looking = setInterval(() => {
    if (process.ppid === parent) return;
    clearInterval(looking);
    act();
  }, LOOK_EVERY_MS);
  looking.unref();
}
