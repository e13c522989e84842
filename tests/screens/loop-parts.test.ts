import type { VueWrapper } from '@vue/test-utils';
import { describe, expect, it } from 'vitest';
import { aBranch, aFigure, aLoopFrame, aPlace, aReading, aSite } from './fixtures/builders';
import { loopShown, plain, siteWith } from './fixtures/loop-shown';

const show = loopShown();
const chapters = (shown: VueWrapper): string[] => shown.findAll('.chapter h2').map((title) => title.text());

describe('the parts of a loop', () => {
  it('are drawn only where the unit has them', async () => {
    const shown = await show(aLoopFrame({ points: [], branches: [] }));
    expect(chapters(shown)).toEqual([]);
  });

  it('stand along the water’s way', async () => {
    const points = [
      aReading('supplyTank.level', 0.5, 'm'),
      aReading('loop.flow', 0.0057, 'm3/s'),
      aReading('approach', 4.9, 'K'),
      aReading('gasLoad', 5e-5, 'm3/s'),
      aReading('rideThroughPlate', 45, 's'),
      aReading('water.ph', 8.6, '1'),
    ];
    const shown = await show(aLoopFrame({ points }));
    expect(chapters(shown)).toEqual([
      'Tanks',
      'Pump and filter',
      'Exchanger',
      'Branches',
      'Air',
      'If the flow stopped now',
      'Water',
    ]);
  });

  it('link every value to its trend, and say unit, age and doubt', async () => {
    const doubtful = aReading('inLeak', 4e-5, 'm3/s', { quality: 'uncertain', reasons: ['warming'], age: 7 });
    const shown = await show(aLoopFrame({ points: [doubtful] }));
    const fact = shown.get('[data-testid=fact-inLeak]');
    expect(plain(fact.text())).toContain('in-leak 7 s');
    expect(plain(fact.text())).toContain('2.4 L/min free air');
    expect(fact.text()).toContain('uncertain: not watched long enough yet');
    expect(fact.get('a').attributes('href')).toBe('/trends?points=e7:inLeak');
  });

  it('leave out what does not apply now, and say of what is silent that it has no value', async () => {
    const points = [
      aReading('supplyTank.level', null, 'm'),
      aReading('timeToEmpty', null, 's', { reasons: ['notApplicable'] }),
    ];
    const shown = await show(aLoopFrame({ points }));
    expect(shown.find('[data-testid=fact-timeToEmpty]').exists()).toBe(false);
    expect(shown.get('[data-testid="fact-supplyTank.level"]').text()).toContain('no value');
  });
});

describe('the tanks', () => {
  it('show the levels at which an alarm stands', async () => {
    const limits = [
      {
        entry: 'TANK-3',
        title: 'Level low',
        point: 'separator.level',
        side: 'below',
        limit: 0.2,
        unit_of_measure: 'm',
      },
    ];
    const shown = await show(aLoopFrame({ points: [aReading('separator.level', 0.4, 'm')] }), aSite(), {
      '/api/units/e7/limits': { unit: 'e7', limits },
    });
    expect(shown.findAll('[data-testid=vessel-separator] .tank-mark')).toHaveLength(1);
    expect(shown.get('[data-testid=vessel-separator] .tank-number').text()).toBe('0.20');
  });

  it('of shape b are the alternating ones, with which of them fills', async () => {
    const site = siteWith({
      shape: 'b',
      tanks: [
        { id: 't1', name: 'Tank 1' },
        { id: 't2', name: 'Tank 2' },
      ],
    });
    const points = [
      aReading('tank.t1.level', 0.3, 'm'),
      aReading('tank.t1.filling', 1, '1'),
      aReading('tank.t2.level', 0.6, 'm'),
      aReading('tank.t2.filling', 0, '1'),
    ];
    const shown = await show(aLoopFrame({ points }), site);
    expect(shown.findAll('.vessel')).toHaveLength(2);
    expect(shown.get('[data-testid="vessel-tank.t1"]').text()).toContain('filling under vacuum');
    expect(shown.get('[data-testid="vessel-tank.t2"]').text()).toContain('discharging');
  });

  it('of shape c are the reservoir alone', async () => {
    const shown = await show(aLoopFrame({ points: [aReading('separator.level', 0.4, 'm')] }), siteWith({ shape: 'c' }));
    expect(shown.findAll('.vessel h3').map((title) => title.text())).toEqual(['Vacuum reservoir']);
  });

  it('say that water walks between the units of one loop while the sum stands', async () => {
    const points = [
      aReading('supplyTank.level', 0.5, 'm'),
      aReading('supplyTankRate', 0, 'm3/s'),
      aReading('separatorRate', 50 / 60_000, 'm3/s'),
      aReading('loopWaterRate', 0, 'm3/s'),
    ];
    const loop = { id: 'l', name: 'Loop L', units: ['e1', 'e7'], unitsNeeded: 1 };
    const shown = await show(aLoopFrame({ points, loop }));
    expect(shown.get('[data-testid=water-walk]').text()).toContain('Water is moving from E1 to E7.');
    expect(shown.get('.head-note').text()).toContain('Loop L with E1, 1 of 2 needed');
  });
});

describe('the branches and servers', () => {
  it('say of an isolated branch that it is not protected', async () => {
    const branches = [aBranch('1', 0.0007), aBranch('2', 0, { state: 'isolated' })];
    const shown = await show(aLoopFrame({ branches }));
    expect(shown.find('[data-testid=branch-state-1]').exists()).toBe(false);
    expect(shown.get('[data-testid=branch-state-2]').text()).toContain('not protected');
  });

  it('say how far what is trapped in an isolated branch stands from ambient, and that it is not known where nothing tells', async () => {
    const branches = [
      aBranch('1', 0, { state: 'isolated', vacuumMargin: aFigure(41_000) }),
      aBranch('2', 0, { state: 'isolated', vacuumMargin: aFigure(-9_000) }),
      aBranch('3', 0, { state: 'isolated', vacuumMargin: aFigure(null) }),
    ];
    const shown = await show(aLoopFrame({ branches }));
    const told = (id: string): string => plain(shown.get(`[data-testid=branch-state-${id}]`).text());
    expect(told('1')).toMatch(/not protected; its own pressure is 41\.0 kPa below ambient at its sensor/);
    expect(told('2')).toMatch(/9\.0 kPa above ambient: an opening would let water out/);
    expect(told('3')).toMatch(/its own pressure is not known/);
    expect(told('2')).toContain('follow the maker’s instructions and local rules');
  });

  it('leave out what a branch has no sensor for', async () => {
    const branches = [aBranch('1', 0.0007, { returnPressure: aFigure(null), vacuumMargin: aFigure(null) })];
    expect((await show(aLoopFrame({ branches }))).get('.branch').text()).not.toContain('return pressure');
  });

  it('say in a word that a branch has no flow sensor, and doubt nothing else of it', async () => {
    const none = aFigure(null, { age: null });
    const branch = aBranch('1', null, {
      flow: none,
      flowShare: aFigure(null, { age: null, reasons: ['notApplicable'] }),
      heatRemoved: aFigure(null, { reasons: ['notApplicable'] }),
    });
    const shown = (await show(aLoopFrame({ points: [], branches: [branch] }))).get('.branch');
    expect(plain(shown.text())).toContain('flow not measured');
    expect(plain(shown.text())).toContain('hottest plate51.0 °C');
    expect(shown.text()).not.toMatch(/no value|share of expected|heat|never received/);
  });

  it('offer trends only of what the branches have', async () => {
    const points = [aReading('branch.1.return.temperature', 44, 'Cel')];
    const shown = await show(aLoopFrame({ points }));
    expect(shown.findAll('.branches ~ p a').map((link) => link.text())).toEqual(['return temperature']);
  });

  it('fold servers away by branch', async () => {
    const server = {
      id: 's1',
      name: 'Server 1',
      branch: '1',
      returnTemperature: aFigure(44),
      power: aFigure(1200),
      fanSpeed: aFigure(null),
      hottestPlate: aFigure(52),
      hottestPlateId: 'p2',
    };
    const shown = await show(aLoopFrame({ servers: [server] }));
    const fold = shown.get('[data-testid=servers-1]');
    expect(fold.attributes('open')).toBeUndefined();
    expect(fold.get('summary').text()).toBe('Rack 1: 1 server');
    expect(plain(fold.get('.server').text())).toContain('power 1.20 kW');
    expect(fold.get('.server').text()).not.toContain('fans');
  });
});

describe('the clocks', () => {
  it('say what never comes in words, not as a number', async () => {
    const points = [
      aReading('rideThroughFlow', 18, 's'),
      aReading('rideThroughFans', null, 's', { reasons: ['notApplicable'], age: 0.4 }),
    ];
    const picture = (await show(aLoopFrame({ points }))).get('.ride-through');
    expect(picture.attributes('aria-label')).toContain('18\u00a0s');
    expect(picture.attributes('aria-label')).toContain('no limit is reached on fans');
  });

  it('claim nothing where they can’t be worked out', async () => {
    const points = [
      aReading('rideThroughFlow', 18, 's'),
      aReading('rideThroughPlate', null, 's', { reasons: ['notApplicable'] }),
    ];
    const picture = (await show(aLoopFrame({ points }))).get('.ride-through');
    expect(picture.text()).toContain('plate limit: not known of this unit');
    expect(picture.text()).not.toContain('no limit is reached');
  });
});

describe('a plant of another shape', () => {
  const points = [aReading('supplyTank.pressure', 74_000, 'Pa'), aReading('separator.level', 0.5, 'm')];
  const path = [aPlace('Supply tank', 74_000, { outsideUnit: false })];

  it('has a reservoir and a supply header where the pump draws from the reservoir', async () => {
    const shown = await show(aLoopFrame({ points, path }), siteWith({ shape: 'c' }));
    expect(chapters(shown)[0]).toBe('Reservoir');
    expect(shown.findAll('.vessel h3').map((name) => name.text())).toEqual(['Vacuum reservoir', 'Supply header']);
    expect(shown.get('.along-the-path').text()).toContain('Supply header');
    expect(shown.text()).not.toMatch(/separator|supply tank/i);
  });

  it('has a discharging tank and a receiver where tanks alternate', async () => {
    const gains = aReading('supplyTankRate', 0, 'm3/s');
    const shown = await show(aLoopFrame({ points: [...points, gains], path }), siteWith({ shape: 'b' }));
    expect(shown.findAll('.vessel h3').map((name) => name.text())).toEqual(['Discharging tank', 'Vacuum receiver']);
    expect(shown.get('[data-testid=fact-supplyTankRate]').text()).toContain('both tanks gain');
    expect(shown.text()).not.toMatch(/separator|supply tank/i);
  });
});
