import { describe, expect, it } from 'vitest';
import { lengthOf, tonePatterns } from '../../../../frontend/src/state/tone-pattern';
import { TonePlayer } from '../../../../frontend/src/state/tone-player';

/** A sound card on paper: what was set when. */
function paper() {
  const ramps: [gain: number, atS: number][] = [];
  const tones: { hz: number; fromS: number; toS: number }[] = [];
  const master: number[] = [];
  const node = { connect: (next: unknown) => next };
  const context = {
    currentTime: 10,
    state: 'running',
    onstatechange: null as (() => void) | null,
    destination: node,
    createGain: () => {
      const gain = {
        set value(value: number) {
          master.push(value);
        },
        get value() {
          return master.at(-1) ?? 0;
        },
        setValueAtTime: (value: number, atS: number) => ramps.push([value, atS]),
        linearRampToValueAtTime: (value: number, atS: number) => ramps.push([value, atS]),
      };
      return { ...node, gain };
    },
    createOscillator: () => {
      const tone = { hz: 0, fromS: 0, toS: 0 };
      tones.push(tone);
      const frequency = {
        set value(hz: number) {
          tone.hz = hz;
        },
      };
      const start = (atS: number) => void (tone.fromS = atS);
      const stop = (atS: number) => void (tone.toS = atS);
      return { ...node, type: 'sine', frequency, start, stop };
    },
    resume: () => Promise.resolve(),
    close: () => Promise.resolve(),
  };
  return { player: new TonePlayer(context as unknown as AudioContext), context, ramps, tones, master };
}

describe('a player of tones', () => {
  it('plays each tone once, in turn, at the loudness asked for', () => {
    const { player, tones, master } = paper();
    player.play(tonePatterns[1], 0.2);
    expect(tones.map(({ hz }) => hz)).toEqual([880, 1175, 880, 1175, 880]);
    for (const [i, { fromS, toS }] of tones.entries()) {
      expect(toS).toBeGreaterThan(fromS);
      expect(fromS).toBeGreaterThanOrEqual(tones[i - 1]?.toS ?? 10);
    }
    expect((tones.at(-1)?.toS ?? 0) - (tones[0]?.fromS ?? 0)).toBeCloseTo(lengthOf(tonePatterns[1]), 6);
    expect(master).toEqual([0.2]);
  });

  it('begins and ends each tone at silence, by a ramp', () => {
    const { player, ramps } = paper();
    player.play(tonePatterns[3], 1);
    expect(ramps.map(([gain]) => gain)).toEqual([0, 1, 1, 0]);
    const times = ramps.map(([, atS]) => atS);
    expect(times).toEqual([...times].sort((a, b) => a - b));
    expect((times[1] ?? 0) - (times[0] ?? 0)).toBeGreaterThanOrEqual(0.02);
  });

  it('tells when the sound is taken away or let again, and nothing once it is closed', async () => {
    const { player, context } = paper();
    const told: boolean[] = [];
    player.whenChanged(() => told.push(player.allowed));
    for (const state of ['interrupted', 'running']) {
      context.state = state;
      context.onstatechange?.();
    }
    expect(told).toEqual([false, true]);
    await player.close();
    expect(context.onstatechange).toBeNull();
  });

  it('falls silent by a ramp, too', () => {
    const { player, ramps } = paper();
    player.play(tonePatterns[2], 0.6);
    ramps.length = 0;
    player.stop();
    expect(ramps.map(([gain]) => gain)).toEqual([0.6, 0]);
  });
});
