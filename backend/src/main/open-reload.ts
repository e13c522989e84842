import type { SiteReader } from '../connections/site-files/site-reader';
import { SiteWatch } from '../connections/site-files/site-watch';
import type { RunnerHealth } from '../ports/health-report';
import type { ClosingStack } from './closing-stack';
import { shownPath } from './open-site';
import { SiteReload, type LoadedSite, type ReloadParts } from './site-reload';

/** Watches the site file from now on; a new content that is fit to run takes the place of the one in force. */
export function openReload(
  file: string,
  loaded: LoadedSite,
  reader: SiteReader,
  closing: ClosingStack,
  parts: Pick<ReloadParts, 'replace' | 'wallMs' | 'say'>,
): SiteReload {
  const reload = new SiteReload(loaded, { ...parts, file: shownPath(file), read: (hash) => reader.read(file, hash) });
  const watch = new SiteWatch(file, () => void reload.reload());
  closing.add(() => watch.stop());
  void watch.start();
  return reload;
}

/** Health says that a newer site file was refused. */
export const withReasons = (health: RunnerHealth, more: () => ReturnType<RunnerHealth['reasons']>): RunnerHealth => ({
  lastSampleAge: () => health.lastSampleAge(),
  isJudging: () => health.isJudging(),
  reasons: () => [...health.reasons(), ...more()],
});
