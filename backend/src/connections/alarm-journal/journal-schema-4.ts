/** Schema 4: notes and handovers are found by the time that they speak of, and what follows one by its sequence. Never edited. */
export const schema4 = `
  CREATE INDEX journal_notes ON journal (happened_ms, sequence)
    WHERE cause IN ('noteWritten', 'noteCorrected', 'noteWithdrawn', 'shiftHandedOver', 'shiftTakenOver');
  CREATE INDEX journal_followed ON journal (sequence)
    WHERE cause IN ('noteCorrected', 'noteWithdrawn', 'shiftTakenOver');`;
