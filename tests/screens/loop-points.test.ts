import { describe, expect, it } from 'vitest';
import { aFigure, aLine, aLoopFrame, anAlarm, anAlert, aPlace, aReading } from './fixtures/builders';
import { loopShown, plain, siteWith } from './fixtures/loop-shown';

const show = loopShown();

describe('points that are only to be waited for', () => {
  const waits = (id: string) => aReading(id, null, '1', { kind: 'derived', reasons: ['warming'], age: 0.4 });

  it('are named in one line where they are several, and stand as themselves where they are few', async () => {
    const points = ['marginTrend', 'uaTrend', 'plateTrend'].map(waits);
    const many = await show(
      aLoopFrame({ points: [...points, aReading('patternDistance', 0.4, '1', { kind: 'derived' })] }),
    );
    expect(many.find('[data-testid=fact-uaTrend]').exists()).toBe(false);
    expect(many.get('[data-testid=facts-waiting]').text()).toContain('UA against clean, in a day');
    expect(plain(many.get('[data-testid=fact-patternDistance]').text())).toContain('0.40 × its limit');
    many.unmount();
    const few = await show(aLoopFrame({ points: points.slice(0, 2) }));
    expect(few.get('[data-testid=fact-uaTrend]').text()).toContain('not watched long enough yet');
  });
});

describe('places and plates in numbers', () => {
  it('show each wetted place running and once the water stands, with a broken line for the second', async () => {
    const derived = { kind: 'derived', where: 'Supply main' } as const;
    const points = [
      aReading('node.supply-main.pressure', 86_000, 'Pa', derived),
      aReading('node.supply-main.pressureStopped', 79_000, 'Pa', derived),
    ];
    const path = [aPlace('supply main', 86_000), aPlace('return main', 42_000)];
    const shown = await show(aLoopFrame({ points, path }));
    expect(shown.find('.way-stopped').attributes('d')).toMatch(/^M/);
    const numbers = plain(shown.get('.path-numbers').text());
    expect(numbers).toContain('once the water stands');
    expect(numbers).toContain('79.0 kPa absolute');
    expect(shown.get('.path-numbers a').attributes('href')).toBe('/units/e7?value=node.supply-main.pressure');
  });

  it('name the chip that would be hottest at full power, and fold the plates away by branch', async () => {
    const points = [aReading('plate.p1.temperatureAtFullPower', 71, 'Cel', { kind: 'derived' })];
    const shown = await show(aLoopFrame({ points }));
    const chapter = shown.findAll('.chapter').find((one) => one.get('h2').text() === 'Plates');
    expect(plain(chapter?.text() ?? '')).toContain('hottest chip expected at full power < 3 s71.0 °C');
    expect(shown.get('[data-testid=plates-1] summary').text()).toBe('Rack 1: 1 plate');
  });

  it('leave what is only kept for the energies out of the table', async () => {
    const points = [aReading('heatRemovedUncertainty', 4_000, 'W', { kind: 'derived' })];
    const shown = await show(aLoopFrame({ points }));
    expect(shown.find('[data-testid=point-heatRemovedUncertainty]').exists()).toBe(false);
  });
});

describe('the title of an alarm', () => {
  it('stands in the words of the unit’s own plant', async () => {
    const alarms = [anAlarm('e7:TANK-3', { title: 'Separator level high' })];
    const shown = await show(aLoopFrame({ alarms }), siteWith({ shape: 'c' }));
    expect(shown.get('.loop-aside').text()).toContain('Vacuum reservoir level high');
  });
});

describe('points that a unit has nothing to work out from', () => {
  const absent = aReading('chipPower', null, 'W', { kind: 'derived', reasons: ['notApplicable'] });
  const warming = aReading('filterTimeToLimit', null, 's', { kind: 'derived', reasons: ['warming'], age: 0.4 });

  it('are named once under the table, without an empty row', async () => {
    const shown = await show(aLoopFrame({ points: [absent, warming] }));
    expect(shown.find('[data-testid=point-chipPower]').exists()).toBe(false);
    expect(shown.get('[data-testid=absent-points]').text()).toContain('Chip power');
    expect(shown.get('[data-testid=absent-points]').text()).not.toContain('Time until the filter');
  });

  it('stand apart from those that are still to come, which are neither bad nor old', async () => {
    const row = (await show(aLoopFrame({ points: [absent, warming] }))).get('[data-testid=point-filterTimeToLimit]');
    expect(row.text()).toContain('not watched long enough yet');
    expect(row.text()).not.toMatch(/bad|old/);
  });

  it('have no age and no fault among the figures', async () => {
    const line = aLine('e7', { chipPower: aFigure(null, { age: null, reasons: ['notApplicable'] }) });
    const figures = (await show(aLoopFrame({ line }))).get('.figures');
    expect(plain(figures.text())).toContain('of chip power not known here');
    expect(figures.text()).not.toMatch(/bad|old/);
  });
});

describe('what an engineer is to know', () => {
  it('stands apart from the alarms, without a priority', async () => {
    const shown = await show(aLoopFrame({ alerts: [anAlert('e7:SET-1')] }));
    expect(shown.get('.loop-aside').text()).toContain('None. Nothing here needs a person.');
    const alert = shown.get('[data-testid="alert-e7:SET-1"]');
    expect(alert.text()).toContain('Ask who did it and why.');
    expect(alert.find('.priority-mark').exists()).toBe(false);
  });
});

describe('a loop that is vented under a permit', () => {
  it('says that it is not protected', async () => {
    const shown = await show(aLoopFrame({ line: aLine('e7', { ventedNotProtected: true }) }));
    expect(shown.get('.head-note').text()).toContain('vented, not protected, under an open permit');
  });
});
