import { describe, expect, it } from 'vitest';
import { unitEntries } from '../../../../../backend/src/evaluation/alarm-rules/catalogue/catalogue';
import { createPipelineState } from '../../../../../backend/src/evaluation/pipeline/pipeline-state';
import { notWatched } from '../../../../../backend/src/runner/views/not-watched';
import { smallSite } from '../../../../helpers/small-site';

const site = smallSite();
const lacksOf = (unit: number, entry: string) => notWatched(site, unit).find((one) => one.entry === entry)?.lacks;

describe('what a unit can raise no alarm of', () => {
  it('is every entry of the catalogue that is not judged there, once', () => {
    const { unitPlaces } = createPipelineState(site, 'wall');
    for (const unit of [0, 1]) {
      const judged = [...(unitPlaces[unit] ?? [])].map((place) => unitEntries[place]?.id);
      const rest = unitEntries.map(({ id }) => id).filter((id) => !judged.includes(id));
      expect(notWatched(site, unit).map(({ entry }) => entry)).toEqual(rest);
      expect(rest.length).toBeGreaterThan(0);
    }
  });

  it('names the points that the entry rests on and the unit does not measure, and no other', () => {
    expect(lacksOf(0, 'PUMP-3')).toEqual(['Pump power', 'Pump discharge pressure']);
    expect(lacksOf(0, 'VSRC-1')).toEqual(['Vacuum source running', 'Vacuum source commanded to run']);
  });

  it('names none where the points are measured and a figure of the site file is not stated', () => {
    // The class of the supply water is not set for m1, whose supply temperature comes.
    expect(lacksOf(0, 'TSUP-2')).toEqual([]);
    expect(site.units[0]?.design.supplyClassLimitC).toBeNull();
  });
});
