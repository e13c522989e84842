import type { Site } from '@ebbline/shared/contract/http-api';
import type { ShallowRef } from 'vue';
import { shallowReadonly, shallowRef, watch } from 'vue';
import { readSite } from '../api/site';
import { useSession } from './use-session';

const site = shallowRef<Site | null>(null);
const problem = shallowRef<string | null>(null);
const retryMs = 2000;
let asked = false;

/** The site as the server describes it, asked for until it comes. One copy for the whole page. */
export function useSite(): {
  readonly site: Readonly<ShallowRef<Site | null>>;
  readonly problem: Readonly<ShallowRef<string | null>>;
} {
  if (!asked) {
    asked = true;
    begin();
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
      void ask();
      void Promise.resolve().then(() => stop());
    },
    { immediate: true },
  );
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
  site.value = given;
}

/** The zone in which this page shows times: the site's, or UTC until it is known. */
export const zoneOf = (known: Site | null): string => known?.timeZone ?? 'UTC';
