import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { clientId } from '../../../../../backend/src/connections/config/client-id';
import { stopAfterEach } from '../../../../helpers/stop-after';
import { temporaryFolder } from '../../../../helpers/temporary-folder';

const keep = stopAfterEach();

describe('the client id', () => {
  it('is drawn once a data folder, of 23 letters and digits as every broker takes them [MQTT-3.1.3-5]', async () => {
    const one = keep(await temporaryFolder());
    const other = keep(await temporaryFolder());
    const drawn = clientId(one.path);
    expect(drawn).toMatch(/^[0-9a-zA-Z]{23}$/);
    expect(clientId(one.path)).toBe(drawn);
    expect(clientId(other.path)).not.toBe(drawn);
  });

  it('is drawn anew where the file holds something else', async () => {
    const folder = keep(await temporaryFolder());
    await writeFile(join(folder.path, 'mqtt-client-id'), 'half an i');
    expect(clientId(folder.path)).toMatch(/^ebbline[0-9a-f]{16}$/);
  });
});
