import { randomBytes } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const FILE = 'mqtt-client-id';

/**
 * The name under which the broker keeps our session, drawn once a data folder: two programs under one
 * name would throw each other out without end. 23 letters and digits, which every broker takes [MQTT-3.1.3-5].
 */
export function clientId(dataFolder: string): string {
  const file = join(dataFolder, FILE);
  const kept = readIfThere(file);
  if (/^ebbline[0-9a-f]{16}$/.test(kept)) return kept;
  const drawn = `ebbline${randomBytes(8).toString('hex')}`;
  writeFileSync(file, drawn);
  return drawn;
}

function readIfThere(file: string): string {
  try {
    return readFileSync(file, 'utf8').trim();
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return '';
    throw error;
  }
}
