import type { TonePattern } from './tone-pattern';

/** Up and down so long, s: a tone that starts or ends at once clicks, and startles. */
const RAMP_S = 0.03;
/** A moment ahead, so that the first tone is not cut. */
const AHEAD_S = 0.02;

/** Plays patterns of tones, one at a time. Needs a page that the browser lets make sound. */
export class TonePlayer {
  private playing: GainNode | null = null;

  constructor(private readonly context: AudioContext) {}

  /** Whether the browser lets it sound now. */
  get allowed(): boolean {
    return this.context.state === 'running';
  }

  /** Tells of every change of `allowed`: a call, a lock or another program may take the sound away at any time. */
  whenChanged(listener: () => void): void {
    this.context.onstatechange = listener;
  }

  /** Asks the browser for it; only during a click or a key will it say yes. */
  async ask(): Promise<void> {
    await this.context.resume();
  }

  /** @param loudness 0 to 1 */
  play({ tones }: TonePattern, loudness: number): void {
    this.stop();
    const { context } = this;
    const all = context.createGain();
    all.gain.value = loudness;
    all.connect(context.destination);
    const beginS = context.currentTime + AHEAD_S;
    for (const { startS, lengthS, frequencyHz } of tones) {
      const [fromS, toS] = [beginS + startS, beginS + startS + lengthS];
      const tone = context.createOscillator();
      const envelope = context.createGain();
      tone.type = 'triangle';
      tone.frequency.value = frequencyHz;
      envelope.gain.setValueAtTime(0, fromS);
      envelope.gain.linearRampToValueAtTime(1, fromS + RAMP_S);
      envelope.gain.setValueAtTime(1, toS - RAMP_S);
      envelope.gain.linearRampToValueAtTime(0, toS);
      tone.connect(envelope).connect(all);
      tone.start(fromS);
      tone.stop(toS);
    }
    this.playing = all;
  }

  /** Quiet within a ramp. */
  stop(): void {
    const { playing, context } = this;
    if (playing === null) return;
    this.playing = null;
    playing.gain.setValueAtTime(playing.gain.value, context.currentTime);
    playing.gain.linearRampToValueAtTime(0, context.currentTime + RAMP_S);
  }

  async close(): Promise<void> {
    this.stop();
    this.context.onstatechange = null;
    await this.context.close();
  }
}
