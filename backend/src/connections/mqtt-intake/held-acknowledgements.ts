import type { DeliveryGate } from '../../ports/delivery-gate';

interface Held {
  readonly ordinal: number;
  readonly owner: object;
  readonly bytes: Uint8Array;
  readonly send: (bytes: Uint8Array) => void;
}

/** Acknowledgements in the order in which their messages came, until what they acknowledge is committed. */
export class HeldAcknowledgements implements DeliveryGate {
  private readonly held: Held[] = [];
  private count = 0;

  hold(owner: object, bytes: Uint8Array, send: (bytes: Uint8Array) => void): void {
    this.held.push({ ordinal: ++this.count, owner, bytes, send });
  }

  waiting(): number {
    return this.held.length;
  }

  mark(): number {
    return this.count;
  }

  release(mark: number): void {
    const first = this.held.findIndex((one) => one.ordinal > mark);
    for (const { bytes, send } of this.held.splice(0, first === -1 ? this.held.length : first)) send(bytes);
  }

  /** The connection is gone: the broker delivers those messages again on the next one. */
  forget(owner: object): void {
    const kept = this.held.filter((one) => one.owner !== owner);
    this.held.splice(0, this.held.length, ...kept);
  }
}
