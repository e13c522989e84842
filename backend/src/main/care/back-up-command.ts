import { existsSync, readdirSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { refusedTarget } from '../../connections/care/back-up-folder';
import { segmentOrdinal } from '../../connections/history-store/queue/queue-segment';
import { historyQueueFolder } from '../history-queue-folder';
import { messageOf } from './message-of';
import { stored } from './stores-in-back-up';
import { writeBackUp } from './write-back-up';

const usage = 'Usage: npm run backup -- FOLDER   (the data folder of EBBLINE_DATA, default ./data, to a new FOLDER)';

export interface CareCommand {
  readonly args: readonly string[];
  readonly dataFolder: string;
  readonly variables: Readonly<Record<string, string | undefined>>;
  readonly nowMs: number;
  readonly say: (text: string) => void;
  readonly complain: (text: string) => void;
}

/**
 * The command behind `npm run backup`. Returns the exit code: 0 written and whole, 1 written, but the chain of the journal is broken
 * (in the data folder as well), 2 not written.
 */
export async function backUpCommand({
  args,
  dataFolder,
  variables,
  nowMs,
  say,
  complain,
}: CareCommand): Promise<0 | 1 | 2> {
  const [named, ...more] = args;
  if (named === undefined || more.length > 0 || named.startsWith('-')) {
    complain(usage);
    return 2;
  }
  const target = resolve(named);
  const refused = existsSync(join(dataFolder, stored.journal))
    ? await refusedTarget(target, dataFolder)
    : `the data folder ${dataFolder} holds no journal; set EBBLINE_DATA to the one of the program`;
  if (refused !== null) {
    complain(`No back-up was written: ${refused}.`);
    return 2;
  }
  try {
    const { manifest, notes } = await writeBackUp(dataFolder, target, nowMs);
    const { journal, files } = manifest;
    const megabytes = files.reduce((sum, { bytes }) => sum + bytes, 0) / 1e6;
    say(`${target}: ${files.length} files, ${megabytes.toFixed(1)} MB, by Ebbline ${manifest.program}`);
    say(`journal: ${journal.rows} rows, head: sequence ${journal.sequence}, hash ${journal.hash}`);
    for (const note of [...notes, ...notesOnInflux(dataFolder, variables)]) say(`Note: ${note}.`);
    say(
      'Keep it where only those may read who run Ebbline: it holds what people typed, and how passwords are checked.',
    );
    if (journal.brokenAt === null) return 0;
    complain(
      `The journal is broken at sequence ${journal.brokenAt}, in ${dataFolder} as well: a row was changed, taken out or put in there. Keep both as they are, and compare them with an older back-up.`,
    );
    return 1;
  } catch (fault) {
    complain(`No back-up was written: ${messageOf(fault)}. Look at disk space and permissions, and try again.`);
    return 2;
  }
}

/** What is kept elsewhere, or is on its way there; told by what is there, should the variables be those of another shell. */
function notesOnInflux(dataFolder: string, variables: CareCommand['variables']): readonly string[] {
  const isNamed = ['EBBLINE_INFLUX_URL', 'EBBLINE_INFLUX_URL_FILE'].some((name) => (variables[name] ?? '') !== '');
  const queue = join(dataFolder, historyQueueFolder);
  const isWaiting = (name: string): boolean =>
    segmentOrdinal(name) !== null && (statSync(join(queue, name), { throwIfNoEntry: false })?.size ?? 0) > 0;
  const rowsWait = existsSync(queue) && readdirSync(queue).some(isWaiting);
  return [
    ...(isNamed ? ['history is kept by InfluxDB and is not in this back-up; back it up by the means of InfluxDB'] : []),
    ...(rowsWait
      ? [
          `rows of history wait for InfluxDB in ${queue} and are not in this back-up; leave that folder as it is until InfluxDB has them, which health then says`,
        ]
      : []),
  ];
}
