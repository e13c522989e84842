import type { QualityReason } from '@ebbline/shared/contract/reading';
import { isOld, isStale } from '@ebbline/frontend/src/components/freshness';
import { describe, expect, it } from 'vitest';

const figure = (value: number | null, age: number | null, ...reasons: QualityReason[]) => ({
  value,
  age,
  reasons,
  quality: reasons.length === 0 ? ('good' as const) : ('bad' as const),
});

describe('the age beside a figure', () => {
  it('is of now where the value is, and where a bad one came just now', () => {
    expect(isStale(figure(3, 1))).toBe(false);
    expect(isStale(figure(null, 1, 'outOfRange'))).toBe(false);
  });

  it.each([
    ['nothing ever came', figure(null, null, 'notReceived')],
    ['nothing new came', figure(3, 40, 'stale')],
    ['a bad one came some time ago', figure(null, 3, 'inputBad')],
    ['nothing new came of what it rests on', figure(null, 1, 'stale')],
    ['nobody knows how old it is', figure(3, 1, 'ageUnknown')],
  ])('is called old where %s', (_, one) => expect(isStale(one)).toBe(true));

  it('says nothing of a strip: that one is not of now wherever the value is missing', () => {
    expect(isOld(figure(null, 1, 'outOfRange'))).toBe(true);
    expect(isOld(figure(3, 1))).toBe(false);
  });
});
