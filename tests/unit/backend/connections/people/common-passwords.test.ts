import { describe, expect, test } from 'vitest';
import { lookedAtCharacters } from '../../../../../backend/src/access/password-rules';
import { isCommonPassword } from '../../../../../backend/src/connections/people/common-passwords';

describe('a password', () => {
  // From memory: the most used passwords in published leaks, lengthened as people lengthen them.
  test.for([
    'passwordpassword',
    'Password1234',
    'Passw0rd1234!',
    'administrator1',
    'qwertyuiop123',
    '1qaz2wsx3edc4rfv',
    'iloveyou1234',
    '123456789012',
    'aaaaaaaaaaaa',
    'abababababab',
    'trustno1trustno1',
    'operatoroperator',
    'Ebbline-Ebbline',
    'EbblineAdmin2026',
    '2026-11-26-2026',
  ])('like %s is guessed first', (password) => {
    expect(isCommonPassword(password, 'Ines')).toBe(true);
  });

  test.for(['AdaLovett2026', 'Lovett.Lovett', 'Ada Lovett Ada'])(
    'like %s is guessed first for Ada Lovett',
    (password) => {
      expect(isCommonPassword(password, 'Ada Lovett')).toBe(true);
    },
  );

  test.for([
    'kettle under nine willows',
    'hkpVq2!mDz7x',
    'tea for two at noon',
    'ёлка под дождём поёт',
    '正确的马电池订书钉在月亮上',
  ])('like %s is taken, whatever it is made of', (password) => {
    expect(isCommonPassword(password, 'Ines')).toBe(false);
  });

  test('is not taken for its end, where its beginning is guessed first', () => {
    expect(isCommonPassword(`${'a'.repeat(lookedAtCharacters)}hkpVq2!mDz7x`, 'Ines')).toBe(true);
  });
});
