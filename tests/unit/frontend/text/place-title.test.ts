import { describe, expect, it } from 'vitest';
import { placeTitle } from '../../../../frontend/src/text/place-title';
import { pointTitle } from '../../../../frontend/src/text/point-title';
import { shapeWords } from '../../../../frontend/src/text/shape-words';
import { aSite } from '../../../screens/fixtures/builders';

const unit = aSite().units[0];

describe('a place', () => {
  it('that is a branch has the name of the branch', () => {
    expect(placeTitle('1', unit)).toBe('Rack 1');
    expect(placeTitle('branch.1.flow', unit)).toBe('Branch flow, Rack 1');
  });

  it('that is no point and no branch stays as it came', () => {
    expect(placeTitle('Supply main at its lowest', unit)).toBe('Supply main at its lowest');
  });
});

describe('the words of a plant shape', () => {
  it('are those of the contract where there is a supply tank and a separator', () => {
    expect(shapeWords('Separator level', 'a')).toBe('Separator level');
    expect(shapeWords('Separator level', undefined)).toBe('Separator level');
  });

  it('name what the unit has, large and small letters kept', () => {
    expect(shapeWords('Water in both tanks', 'c')).toBe('Water in the reservoir');
    expect(shapeWords('separator high-level switch', 'c')).toBe('vacuum reservoir high-level switch');
    expect(shapeWords('Supply tank, water gained', 'b')).toBe('Both tanks, water gained');
  });

  it('reach the title of a point', () => {
    const reservoir = unit === undefined ? undefined : { ...unit, shape: 'c' as const };
    expect(pointTitle('supplyTank.pressure', reservoir)).toBe('Supply header pressure');
  });
});
