/**
 * Every place at which a test may end the program at once, as a kill or a loss of power would: the variable
 * `EBBLINE_TEST_FAILPOINT=name` of the environment, or `name:count` for the count-th time that it is passed. In order of the data.
 */
export const failpointNames = [
  // The columns of a new site's history, before anything else.
  'layout-mid-commit',
  // The journal: one transaction for the entries, the standing records and the head of the chain.
  'journal-mid-transaction',
  'journal-before-commit',
  'journal-after-commit',
  // Old rows of the journal become a sealed file, and leave the journal with the record of it.
  'journal-archive-before-rename',
  'journal-archive-written',
  'journal-archive-mid-transaction',
  'journal-archive-after-commit',
  // The tail of history, and the acknowledgements that wait for it.
  'tail-before-commit',
  'tail-after-commit',
  'tail-before-acknowledgement',
  // An hour becomes a file, in force only with its row of the manifest.
  'sealed-file-announced',
  'sealed-file-before-rename',
  'sealed-file-after-rename',
  'seal-mid-hour',
  'seal-mid-manifest',
  'seal-after-manifest',
  'fold-mid-day',
  // Old files go: first their rows of the manifest, then they.
  'retention-mid-manifest',
  'deletion-mid-file',
  // What can be learnt or added up again.
  'memory-mid-write',
  'memory-before-rename',
  'memory-after-rename',
  'energy-mid-write',
  'energy-after-write',
  'energy-mid-forget',
] as const;

export type FailpointName = (typeof failpointNames)[number];

let armed: { readonly name: FailpointName; readonly end: () => void } | null = null;
let left = 0;

/** A place where the program may be ended by a test; costs a comparison where no test asked for it. */
export function failpoint(name: FailpointName): void {
  if (armed?.name !== name) return;
  left -= 1;
  if (left === 0) armed.end();
}

/**
 * Once a thread, before anything is opened. Nothing but the environment of the process reaches it.
 *
 * @param setting value of `EBBLINE_TEST_FAILPOINT`; undefined or empty arms nothing
 * @param end ends the process, whatever it does
 * @throws Error where no such place is known: a misspelt test would otherwise test nothing
 */
export function armFailpoint(setting: string | undefined, end: () => void): void {
  armed = null;
  if (setting === undefined || setting === '') return;
  const [text = '', count = '1', ...rest] = setting.split(':');
  const name = failpointNames.find((known) => known === text);
  if (name === undefined || rest.length > 0 || !/^[1-9]\d{0,8}$/.test(count))
    throw new Error(`EBBLINE_TEST_FAILPOINT must be name or name:count; known are ${failpointNames.join(', ')}`);
  armed = { name, end };
  left = Number(count);
}
