import { writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { journalFile } from '../../connections/alarm-journal/alarm-journal.provider';
import { readSettings } from '../../connections/alarm-journal/read-settings';
import { alarmListText } from '../../connections/site-files/alarm-list-text';
import { lineText } from '../../connections/site-files/line-fault';
import { readAlarmList } from '../../connections/site-files/read-alarm-list';
import { readSiteFile } from '../../connections/site-files/read-site-file';
import { listToApprove } from '../../runner/alarm-list/list-to-approve';
import { SettingsInForce } from '../../runner/alarm-list/settings-in-force';

const usage =
  'Usage: npm run alarms:list -- FILE   (a new FILE; without it to standard output; of EBBLINE_SITE and EBBLINE_DATA)';

export interface WriteAlarmListCommand {
  readonly args: readonly string[];
  readonly dataFolder: string;
  readonly siteFile: string;
  /** The list that was authorised before; null: none. */
  readonly alarmList: string | null;
  readonly say: (text: string) => void;
  readonly complain: (text: string) => void;
}

/**
 * The command behind `npm run alarms:list`: what runs, as a list that can be approved; of a running program too. Returns the exit
 * code: 0 written, 1 the site file, the list before or the journal is not fit to be read, 2 not written.
 */
export async function writeAlarmListCommand({
  args,
  dataFolder,
  siteFile,
  alarmList,
  say,
  complain,
}: WriteAlarmListCommand): Promise<0 | 1 | 2> {
  const [target, ...more] = args;
  if (more.length > 0 || target?.startsWith('-') === true) {
    complain(usage);
    return 2;
  }
  const refuse = (lines: readonly string[]): 1 => {
    for (const line of lines) complain(line);
    complain('No list was written.');
    return 1;
  };
  const read = await readSiteFile(siteFile);
  if (!read.ok) return refuse(read.fault.map((fault) => lineText(siteFile, fault)));
  const { site } = read.value;
  const before = alarmList === null ? null : await readAlarmList(alarmList, alarmList, site);
  if (before?.ok === false) return refuse(before.fault.map((fault) => lineText(alarmList ?? '', fault)));
  const changes = readSettings(join(dataFolder, journalFile));
  if (!changes.ok) return refuse([changes.fault]);
  const settings = new SettingsInForce(site, changes.value);
  for (const { record, fault } of settings.refused())
    complain(
      `Not in it, as it does not fit the site file: the change of ${record.entry} (${record.id}): ${fault.message}`,
    );
  const text = alarmListText(listToApprove(settings, before?.value ?? null));
  if (target === undefined) {
    say(text.trimEnd());
    return 0;
  }
  const path = resolve(target);
  try {
    // Never over another one: it may be the list that is in force.
    writeFileSync(path, text, { flag: 'wx' });
  } catch (cause) {
    const code = cause instanceof Error && 'code' in cause ? String(cause.code) : String(cause);
    complain(`No list was written: ${path} ${code === 'EEXIST' ? 'is there already; name a new file' : `(${code})`}.`);
    return 2;
  }
  say(`${path}: the alarms of ${site.name} as they run, ${settings.accepted().length} changes among them.`);
  say('It is no authorised list until somebody has read it and written a version, who approves it, and the day.');
  return 0;
}
