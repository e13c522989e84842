import { lineText } from '../connections/site-files/line-fault';
import { readAlarmList } from '../connections/site-files/read-alarm-list';
import { SiteWatch } from '../connections/site-files/site-watch';
import type { CompiledSite } from '../evaluation/site/compiled-site';
import { noAuthorisedList, type AuthorisedListInForce } from '../ports/authorised-list';
import { AuthorisedListReload, listLine } from './authorised-list-reload';
import type { ClosingStack } from './closing-stack';
import { shownPath } from './open-site';
import { StartFault } from './start-fault';

export interface OpenedAuthorisedList extends AuthorisedListInForce {
  /** Another site file is in force. */
  follow(site: CompiledSite): Promise<void>;
}

/** The authorised list of the environment, watched from now on; or every fault of it with line and column. Null: there is none. */
export async function openAuthorisedList(
  file: string | null,
  site: CompiledSite,
  say: (line: string) => void,
  closing: ClosingStack,
): Promise<OpenedAuthorisedList> {
  if (file === null) return { ...noAuthorisedList, follow: () => Promise.resolve() };
  const shown = shownPath(file);
  const read = (now: CompiledSite) => readAlarmList(file, shown, now);
  const first = await read(site);
  if (!first.ok)
    throw new StartFault([
      ...first.fault.map((fault) => lineText(shown, fault)),
      'Mend the alarm list, or set EBBLINE_ALARM_LIST to another one; npm run alarms:list writes the one that runs.',
    ]);
  say(listLine(first.value));
  const list = new AuthorisedListReload(first.value, site, { read, say });
  const watch = new SiteWatch(file, () => void list.reload());
  closing.add(() => watch.stop());
  void watch.start();
  return list;
}
