import type { Ebbline } from '../../helpers/ebbline';

/** What a client was told. */
export interface Told {
  readonly alarm: string;
  readonly comment: string;
  /** HTTP 200 came; false: no answer came, and it may have been done or not. */
  readonly confirmed: boolean;
}

/** A client that acknowledges alarms, each time with a comment of its own, and remembers what it was told. */
export class Acknowledger {
  readonly told: Told[] = [];
  private sent = 0;

  get confirmed(): readonly Told[] {
    return this.told.filter(({ confirmed }) => confirmed);
  }

  /** True where it was confirmed. */
  async acknowledge(ebbline: Ebbline, alarm: string): Promise<boolean> {
    this.sent += 1;
    const comment = `seen, number ${this.sent}`;
    try {
      const body = { operator: 'Crash test', comment };
      const reply = await ebbline.post(`/api/alarms/${encodeURIComponent(alarm)}/acknowledge`, body);
      await reply.arrayBuffer();
      if (reply.status === 200) this.told.push({ alarm, comment, confirmed: true });
      return reply.status === 200;
    } catch {
      this.told.push({ alarm, comment, confirmed: false });
      return false;
    }
  }

  /** One after the other in so many lanes; what is not confirmed is let go. */
  async acknowledgeAll(ebbline: Ebbline, alarms: readonly string[], lanes: number): Promise<void> {
    const waiting = [...alarms];
    const lane = async (): Promise<void> => {
      for (let alarm = waiting.shift(); alarm !== undefined; alarm = waiting.shift())
        await this.acknowledge(ebbline, alarm);
    };
    await Promise.all(Array.from({ length: lanes }, lane));
  }
}
