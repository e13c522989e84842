import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nameKey, shownName } from '../../../../backend/src/access/name-key';

describe('a name', () => {
  test.for([
    ['Ada Lovett', 'ada  lovett '],
    ['Ines', 'INES'],
    ['José', 'Jose\u0301'],
    ['Ⅳan', 'ivan'],
    ['Ada', 'A\u200Bda'],
    ['Ada', '\u202EAda'],
    ['Ａｄａ', 'ada'],
    ['Ada Lovett', 'Ada \0 Lovett'],
    ['José', 'Jose\u200D\u0301'],
  ] as const)('%j and %j are one', ([one, other]) => {
    expect(nameKey(one)).toBe(nameKey(other));
  });

  test('and another are two', () => {
    expect(nameKey('Ada')).not.toBe(nameKey('Ida'));
    expect(nameKey('Jose')).not.toBe(nameKey('José'));
  });

  test('of nothing that is seen is empty', () => {
    expect(shownName(' \u200B\u2060\t\n\0 ')).toBe('');
  });

  test('is shown on one line and turns no text around, and its key is the key of its key', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 80 }), (typed) => {
        expect(shownName(typed)).not.toMatch(/[\p{Cc}\p{Cf}]|^\s|\s$|\s\s/u);
        expect(shownName(shownName(typed))).toBe(shownName(typed));
        expect(nameKey(nameKey(typed))).toBe(nameKey(typed));
        expect(nameKey(shownName(typed))).toBe(nameKey(typed));
      }),
      { numRuns: 5000 },
    );
  });
});
