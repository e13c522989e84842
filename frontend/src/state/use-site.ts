import type { Site } from '@ebbline/shared/contract/http-api';
import type { ShallowRef } from 'vue';
import { shallowReadonly, shallowRef, watch } from 'vue';
import { readSite } from '../api/site';
import { readSiteState } from '../api/site-file';
import { useSession } from './use-session';

const site = shallowRef<Site | null>(null);
const problem = shallowRef<string | null>(null);
const retryMs = 2000;
/** A page stays open for weeks, and a site file is changed meanwhile. ms */
const lookAgainMs = 60_000;
let asked = false;
/** Of a site whose content could not be read: whoever tells it first has the site read anew. */
const untold = '';
/** Content of the site file that is held; null where nobody said yet. */
let ofContent: string | null = null;

/** The site as the server describes it, asked for until it comes, and anew where another file is in force. One copy for the whole page. */
export function useSite(): {
  readonly site: Readonly<ShallowRef<Site | null>>;
  readonly problem: Readonly<ShallowRef<string | null>>;
} {
  if (!asked) {
    asked = true;
    begin();
    setInterval(lookAgain, lookAgainMs);
  }
  return { site: shallowReadonly(site), problem: shallowReadonly(problem) };
}

/** Nothing is asked for while nobody may look. */
function begin(): void {
  const { mayLook } = useSession();
  const stop = watch(
    mayLook,
    (may) => {
      if (may !== true) return;
      void askWhole();
      void Promise.resolve().then(() => stop());
    },
    { immediate: true },
  );
}

/** Tells which site file is in force: where it is another than the one that is held, that is read anew. */
export function siteInForce(contentHash: string): void {
  const another = ofContent !== null && ofContent !== contentHash;
  ofContent = contentHash;
  if (another) void ask();
}

function lookAgain(): void {
  if (useSession().mayLook.value !== true) return;
  void readSiteState().then((reply) => {
    if (reply.ok) siteInForce(reply.value.contentHash);
  });
}

/** Its content is asked for first, and not waited for: a file that comes into force between the two answers is read once more. */
async function askWhole(): Promise<void> {
  const state = readSiteState();
  await Promise.all([
    ask(),
    state.then((reply) => {
      ofContent = reply.ok ? reply.value.contentHash : untold;
    }),
  ]);
}

async function ask(): Promise<void> {
  const reply = await readSite();
  if (reply.ok) {
    site.value = reply.value;
    problem.value = null;
    return;
  }
  problem.value = reply.fault.message;
  setTimeout(begin, retryMs);
}

/** Gives the page a site without asking the server; for tests and for a page that already holds one. */
export function holdSite(given: Site | null): void {
  asked = true;
  ofContent = null;
  site.value = given;
}

/** The zone in which this page shows times: the site's, or UTC until it is known. */
export const zoneOf = (known: Site | null): string => known?.timeZone ?? 'UTC';
