import { modes } from '@ebbline/shared/contract/http-api';
import { describe, expect, it } from 'vitest';
import { Origin, Reference } from '../../../../../backend/src/evaluation/site/compiled-site';
import { compiledOrThrow, slotOf, smallSite } from '../../../../helpers/small-site';
import { changed } from './change-document';

describe('compileSite', () => {
  it('gives halls, then units, contiguous slots: measured points first, then typed ones, then derived ones', () => {
    const { holders, slots } = smallSite();
    expect(holders.map(({ id, kind }) => [id, kind])).toEqual([
      ['north', 'hall'],
      ['m1', 'unit'],
      ['m2', 'unit'],
    ]);
    let next = 0;
    for (const [index, holder] of holders.entries()) {
      expect(holder.firstSlot).toBe(next);
      next += holder.slotCount;
      const own = Array.from({ length: holder.slotCount }, (_, k) => holder.firstSlot + k);
      expect(own.map((slot) => slots.holder[slot])).toEqual(own.map(() => index));
      expect(own.map((slot) => holder.slotOf.get(slots.pointId[slot] ?? ''))).toEqual(own);
      const rank = (origin: number): number =>
        [Origin.measured, Origin.byHand, Origin.derived].indexOf(origin as never);
      const measured = own.map((slot) => slots.measured[slot] ?? 0);
      expect(measured).toEqual([...measured].sort((a, b) => rank(a) - rank(b)));
    }
    expect(next).toBe(slots.count);
  });

  it('gives a point and a derived point to every branch of `branch.*`', () => {
    const site = smallSite();
    const unit = site.units[0];
    expect(unit?.branches.map(({ id }) => id)).toEqual(['r1', 'r2']);
    for (const branch of unit?.branches ?? []) {
      expect(branch.slot.flow).toBe(slotOf(site, 'm1', `branch.${branch.id}.flow`));
      expect(branch.slot.returnPressure).toBe(-1);
      expect(slotOf(site, 'm1', `branch.${branch.id}.heatRemoved`)).toBeGreaterThan(branch.slot.flow);
    }
    const binding = site.topics
      .get('small/m1/telemetry')
      ?.bindings.find(({ slot }) => slot === unit?.branches[1]?.slot.flow);
    expect(binding?.path).toEqual(['racks', 'r2', 'flow']);
  });

  it('lets a point named by itself win over `branch.*`', () => {
    const own = { path: 'special', unit: 'm3/h' };
    const site = compiledOrThrow(changed([['units', 'm1', 'points', 'branch.r2.flow'], own]));
    const slot = slotOf(site, 'm1', 'branch.r2.flow');
    const binding = site.topics.get('small/m1/telemetry')?.bindings.find((one) => one.slot === slot);
    expect(binding?.path).toEqual(['special']);
    expect(site.slots.factor[slot]).toBeCloseTo(1 / 3600, 12);
  });

  it('turns ranges, jumps, periods and accuracies into SI, in the reference of the sensor', () => {
    const { slots, ...site } = smallSite();
    const row = (holder: string, point: string) => {
      const slot = slotOf({ slots, ...site }, holder, point);
      const { reference, minimum, maximum, jumpPerS, periodMs, stuckMs, accuracyAbsolute, accuracyRelative } = slots;
      const all = [reference, minimum, maximum, jumpPerS, periodMs, stuckMs, accuracyAbsolute, accuracyRelative];
      return all.map((column) => column[slot]);
    };
    // IEC 60751 class A: 0.15 K and 0.002 of the reading.
    expect(row('m1', 'supply.temperature')).toEqual([Reference.none, 0, 90, 5, 1000, Infinity, 0.15, 0.002]);
    expect(row('m1', 'supply.pressure')).toEqual([Reference.gauge, -100_000, 60_000, Infinity, 1000, Infinity, 400, 0]);
    expect(row('m1', 'supplyTank.pressure')).toEqual([Reference.absolute, 0, 160_000, Infinity, 1000, 600_000, 400, 0]);
    expect(row('m1', 'plate.p1.temperature')[4]).toBe(20_000);
    // 0.5 % of a span of 40 inHg; NIST SP 811 (2008) B.8: 3386.389 Pa.
    expect(row('m2', 'separator.pressure')[6]).toBeCloseTo(0.005 * 40 * 3386.389, 2);
    // 0.5 % of a level whose 100 % are 0.7 m.
    expect(row('m1', 'supplyTank.level')[6]).toBeCloseTo(0.005 * 0.7, 9);
    // 32 °F and 200 °F.
    expect(row('m2', 'supply.temperature')[1]).toBeCloseTo(0, 9);
    expect(row('m2', 'supply.temperature')[2]).toBeCloseTo(93.333, 3);
  });

  it('reads a mass flow through the density at the meter', () => {
    const mass = { path: 'flow', unit: 'kg/h', density: '992 kg/m3', hose: 'supply' };
    const site = compiledOrThrow(changed([['units', 'm1', 'points', 'loop.flow'], mass]));
    expect(site.slots.factor[slotOf(site, 'm1', 'loop.flow')]).toBeCloseTo(1 / 3600 / 992, 15);
  });

  it('lets the nearest limit win, key by key', () => {
    const site = smallSite();
    const of = (unit: number) => site.units[unit]?.limits.get('MARGIN-1');
    expect(of(0)).toEqual({ limit: 6000, deadband: 500, onDelayMs: 15_000 });
    expect(of(1)).toEqual({ limit: 5000, deadband: 500, onDelayMs: 15_000 });
    expect(site.units[0]?.limits.get('DEW-1')).toEqual({ limit: 2 });
    const back = compiledOrThrow(changed([['units', 'm1', 'limits', 'MARGIN-1'], null]));
    expect(back.units[0]?.limits.has('MARGIN-1')).toBe(false);
    expect(back.units[1]?.limits.has('MARGIN-1')).toBe(true);
  });

  it('merges templates key by key, and `~` takes away what one gave', () => {
    const site = compiledOrThrow(
      changed(
        [['templates', 'tall'], { template: 'typeM', elevations: { supplySensor: '2 m' }, plates: { p1: null } }],
        [['units', 'm2', 'template'], 'tall'],
        [['units', 'm2', 'elevations'], { accuracy: '2 cm' }],
      ),
    );
    const design = site.units[1]?.design;
    expect([design?.supplySensorM, design?.supplyTankSurfaceM, design?.elevationAccuracyM]).toEqual([2, 1, 0.02]);
    expect(site.units[1]?.plates).toEqual([]);
    expect(site.units[0]?.plates).toHaveLength(1);
  });

  it('gives each unit of one template its own topics, branches and paths', () => {
    const points = {
      'supply.temperature': { path: 't', unit: '°C' },
      'loop.flow': { path: 'q', unit: 'L/min', hose: 'supply' },
      'branch.*.flow': { path: '{unit}.{branch}', unit: 'L/min' },
      'branch.*.power': { topic: 'meters/{unit}/{branch}', unit: 'kW' },
    };
    const site = compiledOrThrow(
      changed(
        [['templates', 'twin'], { template: 'typeM', topic: 'twin/{unit}', points }],
        [['units', 'a'], { name: 'A', hall: 'north', template: 'twin' }],
        [
          ['units', 'b'],
          { name: 'B', hall: 'north', template: 'twin', branches: { r1: null, r3: {} }, plates: { p1: null } },
        ],
      ),
    );
    const places = (unit: string) =>
      [...site.topics.values()]
        .filter(({ topic }) => topic === `twin/${unit}` || topic.startsWith(`meters/${unit}/`))
        .flatMap(({ topic, bindings }) => bindings.map(({ slot, path }) => [site.slots.pointId[slot], topic, ...path]));
    expect(places('a')).toEqual([
      ['supply.temperature', 'twin/a', 't'],
      ['loop.flow', 'twin/a', 'q'],
      ['branch.r1.flow', 'twin/a', 'a', 'r1'],
      ['branch.r2.flow', 'twin/a', 'a', 'r2'],
      ['branch.r1.power', 'meters/a/r1'],
      ['branch.r2.power', 'meters/a/r2'],
    ]);
    expect(places('b')).toEqual([
      ['supply.temperature', 'twin/b', 't'],
      ['loop.flow', 'twin/b', 'q'],
      ['branch.r2.flow', 'twin/b', 'b', 'r2'],
      ['branch.r3.flow', 'twin/b', 'b', 'r3'],
      ['branch.r2.power', 'meters/b/r2'],
      ['branch.r3.power', 'meters/b/r3'],
    ]);
  });

  it('knows a unit as its own gateway where it names none', () => {
    const { gateways, units, slots } = smallSite();
    expect(gateways.map(({ id, units: own }) => [id, own])).toEqual([
      ['east', [0]],
      ['m2', [1]],
    ]);
    expect(units.map(({ gateway }) => gateway)).toEqual([0, 1]);
    expect([...(gateways[1]?.slots ?? [])].map((slot) => slots.pointId[slot])).toEqual([
      'supply.temperature',
      'return.temperature',
      'supplyTank.pressure',
      'separator.pressure',
      'loop.flow',
      'pump.running',
      'mode',
    ]);
  });

  it('names the places that values point at', () => {
    const site = smallSite();
    const unit = site.units[0];
    const { places } = site.holders[unit?.holder ?? -1] ?? { places: [] };
    expect(unit?.nodes.map(({ place, name }) => places[place] === name)).toEqual([true, true, true, true]);
    expect(unit?.branches.map(({ place }) => places[place])).toEqual(['Rack 1', 'Rack 2']);
    expect(unit?.plates.map(({ place }) => places[place])).toEqual(['Chip 1']);
    expect(places[unit?.pumpInletPlace ?? -1]).toBe('pump inlet');
  });

  it('plans every topic: format, time, words, quality, status', () => {
    const { topics, units } = smallSite();
    expect(topics.get('small/m2/mode')).toMatchObject({ format: 'number', timePath: null });
    expect(topics.get('small/m2/mode')?.bindings[0]?.words?.get('standby')).toBe(modes.indexOf('standby'));
    expect(topics.get('small/m2/separator/p')).toMatchObject({
      format: 'json',
      timePath: ['at.s'],
      timeForm: 'epochSeconds',
      bindings: [{ path: ['value.now'], qualityPath: ['q'], qualityGood: [true] }],
    });
    expect(topics.get('small/east/status')?.status).toEqual({
      gateway: units[0]?.gateway,
      online: 'online',
      path: null,
    });
  });

  it('subscribes to given filters and to the topics that none of them covers', () => {
    const filters = ['small/m1/#', 'small/+/status'];
    const { subscriptions, topics } = compiledOrThrow(changed([['intake', 'subscriptions'], filters]));
    expect(subscriptions.slice(0, 2)).toEqual(filters);
    expect(subscriptions).toHaveLength(topics.size);
    expect(subscriptions).not.toContain('small/m1/telemetry');
    expect(subscriptions).toContain('small/m2/flow');
  });
});
