import { describe, expect, it } from 'vitest';
import { gapPriority } from '../../../../frontend/src/components/gap-priority';

describe('the priority that marks a gap', () => {
  it('is that of the alarm that the gap raised, on its own side', () => {
    expect(gapPriority({ gaps: { left: 1, right: null } }, 'left')).toBe(1);
    expect(gapPriority({ gaps: { left: 1, right: 3 } }, 'right')).toBe(3);
  });

  it('is that of the catalogue until there is one', () => {
    expect(gapPriority({ gaps: { left: 1, right: null } }, 'right')).toBe(2);
    expect(gapPriority({}, 'left')).toBe(2);
  });
});
