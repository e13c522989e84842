/** `npm run alarms:list [-- FILE]`: writes the list of alarms as it runs, to be approved; exit code 0 written, 1 not fit to be read, 2 not written. */
import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { nodeVersionFault } from './build/node-version.mjs';

const fault = nodeVersionFault(process.versions.node);
if (fault === null) {
  const { loadModule } = await import('./build/load-module.mjs');
  const { dataFolder, projectRoot } = await import('./build/paths.mjs');
  const { writeAlarmListCommand } = await loadModule('backend/src/main/care/write-alarm-list-command.ts');
  const demo = join(projectRoot, 'simulator', 'demo-site');
  const [demoSite, demoList] = [join(demo, 'site.yaml'), join(demo, 'alarm-list.yaml')];
  const siteFile = named('EBBLINE_SITE') ?? demoSite;
  process.exitCode = await writeAlarmListCommand({
    args: process.argv.slice(2),
    dataFolder: dataFolder(),
    siteFile,
    alarmList: named('EBBLINE_ALARM_LIST') ?? (siteFile === demoSite && existsSync(demoList) ? demoList : null),
    say: console.log,
    complain: console.error,
  });
} else {
  console.error(fault);
  process.exitCode = 2;
}

function named(variable) {
  const value = process.env[variable];
  return value === undefined || value === '' ? null : resolve(value);
}
