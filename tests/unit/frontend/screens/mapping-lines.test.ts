import type { HeardPlaceShown, MappingProposal } from '@ebbline/shared/contract/mapping';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { chosenOf, linesOf, placeKeyOf, proposalKeyOf } from '../../../../frontend/src/screens/setup/mapping-lines';

const proposal = (more: Partial<MappingProposal>): MappingProposal => ({
  ...{ kind: 'unit', holder: 'n7', point: 'supply.temperature', title: 'Supply temperature', grade: 'likely' },
  ...{ reasons: [], line: "supply.temperature: { topic: 'a', path: ['T'], unit: '°C' }", needs: [] },
  ...more,
});
const place = (proposals: MappingProposal[]): HeardPlaceShown => ({
  ...{ topic: 'a', path: ['T'], count: 3, latest: '31', seen: '31', proposals },
});

describe('the lines for the site file', () => {
  it('stand hall by hall and unit by unit as a site file has them, with what has to be put in above each', () => {
    const text = linesOf([
      proposal({}),
      proposal({ kind: 'hall', holder: 'north', line: "ambient.pressure: { topic: 'b' }" }),
      proposal({ point: 'loop.flow', line: "loop.flow: { topic: 'c' }", needs: ['hose: on which hose'] }),
      proposal({ holder: '12', line: "mode: { topic: 'd' }" }),
    ]);
    expect(text).toBe(
      [
        'halls:',
        '  north:',
        '    points:',
        "      ambient.pressure: { topic: 'b' }",
        'units:',
        '  n7:',
        '    points:',
        "      supply.temperature: { topic: 'a', path: ['T'], unit: '°C' }",
        '      # put in – hose: on which hose',
        "      loop.flow: { topic: 'c' }",
        "  '12':",
        '    points:',
        "      mode: { topic: 'd' }",
        '',
      ].join('\n'),
    );
    expect(parse(text)).toMatchObject({ units: { n7: { points: { 'loop.flow': { topic: 'c' } } } } });
  });

  it.for(['no', 'on', 'true', '7e2', 'null'])('name a unit %s as a text', (holder) => {
    expect(Object.keys((parse(linesOf([proposal({ holder })])) as { units: object }).units)).toEqual([holder]);
  });

  it('are none where nothing is chosen', () => {
    expect(linesOf([])).toBe('');
  });
});

describe('what is chosen for a place', () => {
  const [likely, possible] = [proposal({}), proposal({ point: 'loop.flow', grade: 'possible' })];

  it('is what is likely, and nothing that is merely possible, until a person chooses', () => {
    expect(chosenOf(place([likely, possible]), new Map())).toBe(likely);
    expect(chosenOf(place([possible]), new Map())).toBeNull();
    expect(chosenOf(place([]), new Map())).toBeNull();
  });

  it('is what a person chose, also where more was heard and the order is another', () => {
    const chosen = new Map([[placeKeyOf(place([])), proposalKeyOf(possible)]]);
    expect(chosenOf(place([likely, possible]), chosen)).toBe(possible);
    expect(chosenOf(place([possible, likely]), chosen)).toBe(possible);
    expect(chosenOf(place([likely]), new Map([[placeKeyOf(place([])), '']]))).toBeNull();
  });
});
