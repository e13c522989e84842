import { describe, expect, it } from 'vitest';
import { NewestFirst } from '../../../../../backend/src/connections/site-files/newest-first';

/** Tasks that end when the test says so, and what was begun and answered, in order. */
function bench() {
  const tasks = new NewestFirst();
  const told: string[] = [];
  const ends = new Map<string, (fault?: Error) => void>();
  const ask = (name: string): Promise<void> =>
    tasks
      .run(() => {
        told.push(`${name} begins`);
        return new Promise<string>((resolve, reject) =>
          ends.set(name, (fault) => (fault === undefined ? resolve('done') : reject(fault))),
        );
      })
      .then(
        (value) => void told.push(`${name} ${value ?? 'is overtaken'}`),
        (fault: unknown) => void told.push(`${name} ${fault instanceof Error ? fault.message : ''}`),
      );
  return { told, ask, end: (name: string, fault?: Error) => ends.get(name)?.(fault) };
}

describe('the newest first', () => {
  it('runs one at a time, and of those that wait only the newest', async () => {
    const { told, ask, end } = bench();
    const asked = ['a', 'b', 'c', 'd'].map(ask);
    await Promise.all([asked[1], asked[2]]);
    expect(told).toEqual(['a begins', 'b is overtaken', 'c is overtaken']);
    end('a');
    await asked[0];
    end('d');
    await asked[3];
    expect(told.slice(3)).toEqual(['d begins', 'a done', 'd done']);
  });

  it('goes on after one that fails', async () => {
    const { told, ask, end } = bench();
    const asked = ['a', 'b'].map(ask);
    end('a', new Error('broke'));
    await asked[0];
    end('b');
    await asked[1];
    const third = ask('c');
    end('c');
    await third;
    expect(told.filter((line) => !line.endsWith('begins'))).toEqual(['a broke', 'b done', 'c done']);
  });

  it('lets nobody between the one that ends and the one that waits', async () => {
    const { told, ask, end } = bench();
    const first = ask('a');
    const second = ask('b');
    let third = Promise.resolve();
    const between = first.then(() => void (third = ask('c')));
    end('a');
    await between;
    expect(told).toEqual(['a begins', 'b begins', 'a done']);
    end('b');
    await second;
    end('c');
    await third;
    expect(told.at(-1)).toBe('c done');
  });
});
