import { keyReference } from './key-reference';
import { lineText } from './line-fault';
import { readSiteFile } from './read-site-file';
import { summarizeSite } from './summarize-site';

const usage = 'Usage: npm run site:check -- FILE   (or --keys for the reference of all keys)';

/** The command behind `npm run site:check`: says what is wrong or what was understood; returns the exit code. */
export async function checkSiteFileCommand(
  args: readonly string[],
  say: (text: string) => void,
  complain: (text: string) => void,
): Promise<0 | 1> {
  const [file, ...more] = args;
  if (file === undefined || more.length > 0) {
    complain(usage);
    return 1;
  }
  if (file === '--keys') {
    say(keyReference().trimEnd());
    return 0;
  }
  const read = await readSiteFile(file);
  if (!read.ok) {
    for (const fault of read.fault) complain(lineText(file, fault));
    complain(`${file}: ${read.fault.length} ${read.fault.length === 1 ? 'fault' : 'faults'}; not fit to run`);
    return 1;
  }
  for (const warning of read.value.warnings) complain(`${lineText(file, warning)} (accepted)`);
  say(summarizeSite(read.value.site));
  return 0;
}
