import { execFile } from 'node:child_process';
import { closeSync, openSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { inject } from 'vitest';

const run = promisify(execFile);

/** Runs a program on a data folder that is a disk of its own, of so many MB, gone with the program. Needs 'mounts'. */
export const onSmallDisk = (data: string, megabytes: number): readonly string[] =>
  withMount(`mount -t tmpfs -o size=${megabytes}m tmpfs '${data}' && ln -s '${inject('buildFolder')}' '${data}/build'`);

/** Runs a program on a data folder that it can only read. Needs 'mounts'. */
export const readOnly = (data: string): readonly string[] => withMount(makeReadOnly(data));

const makeReadOnly = (folder: string): string =>
  `mount --bind '${folder}' '${folder}' && mount -o remount,bind,ro '${folder}'`;

const withMount = (mount: string): readonly string[] => ['unshare', '-rm', 'sh', '-c', `${mount} && exec "$@"`, 'sh'];

/** A folder of a running program, run by one of the above or `ownMounts`, becomes read-only for it, and writable again. */
export const ownMounts: readonly string[] = ['unshare', '-rm'];
export const turnReadOnly = (pid: number, folder: string): Promise<unknown> => within(pid, makeReadOnly(folder));
export const turnWritable = (pid: number, folder: string): Promise<unknown> => within(pid, `umount '${folder}'`);

const within = (pid: number, command: string): Promise<unknown> =>
  run('nsenter', ['-t', String(pid), '-U', '-m', '--preserve-credentials', 'sh', '-c', command]);

/** Takes every byte that is left on the disk which the program sees at `folder`; the way to give them back. */
export function fillDisk(pid: number, folder: string): () => void {
  const path = join(`/proc/${pid}/root`, folder, 'filler');
  const file = openSync(path, 'w');
  for (const bytes of [1 << 20, 1 << 12, 1]) {
    const piece = Buffer.alloc(bytes, 1);
    try {
      for (;;) writeSync(file, piece);
    } catch (fault) {
      if ((fault as NodeJS.ErrnoException).code !== 'ENOSPC') throw fault;
    }
  }
  closeSync(file);
  return () => rmSync(path);
}
