/** Schema 6: what was proposed of settings and decided on it is found without a look at every row. Never edited. */
export const schema6 = `
  CREATE INDEX journal_proposals ON journal (sequence) WHERE cause IN ('settingProposed', 'settingWithdrawn');`;
