import type { SiteReader } from '../connections/site-files/site-reader';
import { SiteWatch } from '../connections/site-files/site-watch';
import type { RunnerHealth } from '../ports/health-report';
import type { ClosingStack } from './closing-stack';
import { shownPath } from './open-site';
import { SiteReload, type LoadedSite, type ReloadParts } from './site-reload';

/** Hands on that the site file may have changed; what is heard before anybody listens is kept for whoever listens first. */
export interface SiteNews {
  listen(mayHaveChanged: () => void): void;
  stop(): void;
}

/** Watches the site file from now on: before it is read, so that no edit is missed while the rest is opened. */
export async function watchSite(file: string, closing: ClosingStack): Promise<SiteNews> {
  let hear: (() => void) | null = null;
  let isMissed = false;
  const watch = new SiteWatch(file, () => {
    if (hear === null) isMissed = true;
    else hear();
  });
  closing.add(() => watch.stop());
  await watch.start();
  return {
    listen(mayHaveChanged) {
      hear = mayHaveChanged;
      if (isMissed) mayHaveChanged();
    },
    stop: () => watch.stop(),
  };
}

/** A new content of the site file that is fit to run takes the place of the one in force. */
export function openReload(
  file: string,
  loaded: LoadedSite,
  reader: SiteReader,
  parts: Pick<ReloadParts, 'replace' | 'wallMs' | 'say'>,
): SiteReload {
  return new SiteReload(loaded, { ...parts, file: shownPath(file), read: (hash) => reader.read(file, hash) });
}

/** Health says that a newer site file was refused. */
export const withReasons = (health: RunnerHealth, more: () => ReturnType<RunnerHealth['reasons']>): RunnerHealth => ({
  lastSampleAge: () => health.lastSampleAge(),
  isJudging: () => health.isJudging(),
  reasons: () => [...health.reasons(), ...more()],
});
