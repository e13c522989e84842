import { describe, expect, it } from 'vitest';
import { oneAtATime } from '../../../../frontend/src/state/one-at-a-time';

function server() {
  const asked: string[] = [];
  const answers: ((answer: string) => void)[] = [];
  const ask = oneAtATime((of) => {
    asked.push(of);
    return new Promise<string>((resolve, reject) => {
      answers.push((answer) => {
        if (answer === 'lost') reject(new Error(answer));
        else resolve(answer);
      });
    });
  });
  const answer = async (text: string): Promise<void> => {
    answers.shift()?.(text);
    for (let turn = 0; turn < 10; turn += 1) await Promise.resolve();
  };
  return { ask, asked, answer };
}

describe('questions asked while one is under way', () => {
  it('wait for its answer, and only the newest of them is asked', async () => {
    const { ask, asked, answer } = server();
    const told = ['f', 'fl', 'flo', 'flow'].map((of) => ask(of));
    expect(asked).toEqual(['f']);
    await answer('1');
    expect(asked).toEqual(['f', 'flow']);
    const later = ask('flow-3');
    expect(asked).toHaveLength(2);
    await answer('2');
    expect(asked).toEqual(['f', 'flow', 'flow-3']);
    await answer('3');
    expect(await Promise.all([...told, later])).toEqual(['1', '2', '2', '2', '3']);
    const alone = ask('x');
    expect(asked.at(-1)).toBe('x');
    await answer('4');
    expect(await alone).toBe('4');
  });

  it('are asked also where that one fails', async () => {
    const { ask, asked, answer } = server();
    const [first, second] = [ask('a'), ask('b')];
    const failed = expect(first).rejects.toThrow('lost');
    await answer('lost');
    await failed;
    expect(asked).toEqual(['a', 'b']);
    await answer('2');
    expect(await second).toBe('2');
  });
});
