import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { learntBytes, learntOf } from '../../../../../backend/src/connections/memory-file/learnt-bytes';
import { MemoryFile } from '../../../../../backend/src/connections/memory-file/memory-file';

let folder: string;
beforeEach(() => (folder = mkdtempSync(join(tmpdir(), 'ebbline-learnt-'))));
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('the file of what was learnt', () => {
  it('holds nothing at first, then the newest image alone', async () => {
    const file = new MemoryFile(join(folder, 'learnt.bin'));
    expect(file.load()).toBeNull();
    await file.save({ head: '{"first":1}', numbers: Float64Array.of(1, 2, 3) });
    const newest = { head: '{"unit":"Kühlanlage 2"}', numbers: Float64Array.of(4.25, Number.NaN, -0, 1e300) };
    await file.save(newest);
    const loaded = file.load();
    expect(loaded?.numbers).toEqual(newest.numbers);
    expect(JSON.parse(loaded?.head ?? '')).toEqual(JSON.parse(newest.head));
    expect(readdirSync(folder)).toEqual(['learnt.bin']);
  });

  it('is refused where it is cut off anywhere within its head or a number, or is none at all', () => {
    const whole = learntBytes({ head: '{"a":1}', numbers: Float64Array.of(1, 2) });
    for (const length of [0, 5, 9, 15, whole.length - 1]) expect(learntOf(whole.subarray(0, length))).toBeNull();
    writeFileSync(join(folder, 'learnt.bin'), 'nothing of ours');
    expect(() => new MemoryFile(join(folder, 'learnt.bin')).load()).toThrow(/written anew/);
  });

  it('says no where the folder is gone', async () => {
    const file = new MemoryFile(join(folder, 'gone', 'learnt.bin'));
    await expect(file.save({ head: '{}', numbers: new Float64Array(1) })).rejects.toThrow(/ENOENT/);
    expect(file.load()).toBeNull();
  });
});
