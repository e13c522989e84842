/** What a person is told whose action the journal did not take. */
export const journalUnavailable = {
  code: 'JOURNAL_UNAVAILABLE',
  message: 'The journal can not be written, so nothing was done. See the health page; free disk space, then try again.',
} as const;
