/** Schema 5: when the program last started or ended is found without a look at every row. Never edited. */
export const schema5 = `
  CREATE INDEX journal_program ON journal (sequence) WHERE cause IN ('programStarted', 'programEnded');`;
