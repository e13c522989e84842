import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** Name of the file within the data folder. */
const FILE = 'alarm-topics';

/** Under which topics alarms are told, and under which they were: one filter a line, the present one first, an empty line for none. */
export interface KeptTopics {
  readonly now: string | null;
  readonly left: readonly string[];
}

/** More than anybody changes a prefix between two runs that reach the broker. */
const MOST_LEFT = 8;

/** Notes under which topics alarms are told from now on; what was told under others, and is not yet cleared, is left. */
export function keepTopics(dataFolder: string, now: string | null): KeptTopics {
  const file = join(dataFolder, FILE);
  const left = readIfThere(file)
    .split('\n')
    .filter((line) => line !== '' && line !== now);
  const kept = { now, left: [...new Set(left)].slice(0, MOST_LEFT) };
  writeFileSync(file, linesOf(kept));
  return kept;
}

/** Notes that all is cleared that was left. */
export function forgetLeftTopics(dataFolder: string, now: string | null): void {
  writeFileSync(join(dataFolder, FILE), linesOf({ now, left: [] }));
}

const linesOf = ({ now, left }: KeptTopics): string => [now ?? '', ...left].map((line) => `${line}\n`).join('');

function readIfThere(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return '';
    throw error;
  }
}
