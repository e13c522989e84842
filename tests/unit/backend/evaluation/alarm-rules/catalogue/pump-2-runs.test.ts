import { describe, expect, it } from 'vitest';
import { RuleBench } from '../rule-bench';

const bench = (): RuleBench =>
  new RuleBench({
    also: ['pump.available', 'vacuum.available', 'pump.standby.running', 'vacuum.standby.running'],
    values: { 'pump.available': 1, 'vacuum.available': 1, 'pump.standby.running': 0, 'vacuum.standby.running': 0 },
  }).run(5);

describe.each([
  ['pump.available', 'pump.standby.running', 'standby pump'],
  ['vacuum.available', 'vacuum.standby.running', 'standby vacuum source'],
])('PUMP-2 with a contact %s that drops as the machine runs', (available, running, name) => {
  it('says of no standby that runs that it is not there', () => {
    expect(bench().set(available, 0).set(running, 1).run(120).active('PUMP-2')).toBe(false);
  });

  it('tells one that has stopped and is not ready again', () => {
    const one = bench().set(available, 0).set(running, 1).run(120).set(running, 0).run(70);
    expect(one.detail('PUMP-2')).toBe(`Not available: ${name}.`);
    expect(one.set(running, 1).run(70).active('PUMP-2')).toBe(false);
  });

  it('holds while it is not known whether it runs', () => {
    expect(bench().set(available, 0).bad(running).run(120).active('PUMP-2')).toBe(false);
    const raised = bench().set(available, 0).run(70);
    expect(raised.bad(running).run(120).active('PUMP-2')).toBe(true);
  });
});
