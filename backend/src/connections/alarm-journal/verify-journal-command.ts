import { inspectJournal } from './inspect-journal';

const usage = 'Usage: npm run journal:verify   (the journal of EBBLINE_DATA, default ./data)   or -- FILE';

/**
 * The command behind `npm run journal:verify`: walks the chain of hashes. Returns the exit code: 0 whole, 1 broken or
 * damaged, 2 nothing that could be checked.
 */
export function verifyJournalCommand(
  args: readonly string[],
  journalInUse: string,
  say: (text: string) => void,
  complain: (text: string) => void,
): 0 | 1 | 2 {
  const [path = journalInUse, ...more] = args;
  if (more.length > 0 || path.startsWith('-')) {
    complain(usage);
    return 2;
  }
  const read = inspectJournal(path);
  if (!read.ok) {
    complain(read.fault.message);
    return read.fault.code === 'JOURNAL_FILE_DAMAGED' ? 1 : 2;
  }
  const { rows, sealedRows, head, schemaVersion, brokenAt, archiveFault } = read.value;
  const sealed = sealedRows === 0 ? '' : ` (${sealedRows} of them in sealed files)`;
  say(`${path}: ${rows} rows${sealed}, schema version ${schemaVersion}`);
  say(`head: sequence ${head.sequence}, hash ${head.hash}`);
  if (brokenAt === null) {
    say('whole: every row follows the one before. Compare the hash with one that was noted elsewhere.');
    return 0;
  }
  if (archiveFault !== null) complain(archiveFault);
  complain(
    `broken at sequence ${brokenAt}: a row was changed, taken out or put in there. Keep this file as it is, and compare it with a back-up.`,
  );
  return 1;
}
