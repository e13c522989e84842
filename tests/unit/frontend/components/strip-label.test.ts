import { describe, expect, it } from 'vitest';
import { placeLabel } from '../../../../frontend/src/components/strip-label';

const wide = { x: 100, width: 60, tooSmall: false };

describe('the number of a gap', () => {
  it('stands in the middle of a gap that holds it', () => {
    expect(placeLabel('right', wide, '13', 300)).toMatchObject({ x: 130, anchor: 'middle', overBar: false });
  });

  it('stands over the wall where its gap is too narrow or too small', () => {
    expect(placeLabel('right', { ...wide, width: 8 }, '0.9', 300)).toMatchObject({
      x: 113,
      anchor: 'start',
      overBar: false,
    });
    expect(placeLabel('left', { ...wide, tooSmall: true }, '0.9', 300)).toMatchObject({
      x: 95,
      anchor: 'end',
      overBar: false,
    });
  });

  it('keeps on the strip, past the mark on the bar, where the wall has no room', () => {
    expect(placeLabel('right', { x: 280, width: 15, tooSmall: true }, '−2.5', 300)).toMatchObject({
      x: 253,
      anchor: 'end',
      overBar: true,
    });
    expect(placeLabel('left', { x: 10, width: 15, tooSmall: true }, '−2.5', 300)).toMatchObject({
      x: 52,
      anchor: 'start',
      overBar: true,
    });
  });
});
