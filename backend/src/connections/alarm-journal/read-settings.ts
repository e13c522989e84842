import { existsSync } from 'node:fs';
import Database from 'libsql';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import type { SettingRecord } from '../../evaluation/alarm-rules/settings/setting-record';
import { journalStatements } from './journal-statements';

/** Milliseconds that a commit of a running program is waited for. */
const busyMs = 5000;

/** The changes of settings that a journal file holds, oldest first, without changing a row; none where there is no file yet. */
export function readSettings(path: string): Result<readonly SettingRecord[], string> {
  if (!existsSync(path)) return ok([]);
  let database: InstanceType<typeof Database> | null = null;
  try {
    database = new Database(path, { timeout: busyMs });
    database.exec('PRAGMA query_only = ON');
    return ok(
      journalStatements(database)
        .settingRecords()
        .map((record) => JSON.parse(record) as SettingRecord),
    );
  } catch (fault) {
    const said = fault instanceof Error ? fault.message : String(fault);
    return fail(`${path} cannot be read as a journal of this version (${said}); start the program once with it`);
  } finally {
    database?.close();
  }
}
