import { describe, expect, it } from 'vitest';
import { auditCauses } from '../../../../backend/src/ports/audit';
import { auditCausesInWords, auditWords } from '../../../../frontend/src/text/audit-words';

describe('rows of people and access', () => {
  it('each have words of their own, and there are no words for anything else', () => {
    expect(auditCausesInWords.map(([cause]) => cause)).toEqual([...auditCauses]);
    const said = auditCauses.map(auditWords);
    expect(new Set(said).size).toBe(auditCauses.length);
    for (const words of said) expect(words).toMatch(/^[a-z]/);
  });

  it.each(['acknowledge', 'toString', '', null, undefined])('are not what is caused by %s', (cause) => {
    expect(auditWords(cause)).toBeNull();
  });
});
