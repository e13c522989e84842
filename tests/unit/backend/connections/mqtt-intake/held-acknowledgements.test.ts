import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HeldAcknowledgements } from '../../../../../backend/src/connections/mqtt-intake/held-acknowledgements';

const connection = {};

function gateWith(count: number) {
  const gate = new HeldAcknowledgements();
  const sent: number[] = [];
  const hold = (n: number, owner: object = connection) =>
    gate.hold(owner, Uint8Array.of(n), ([byte]) => void sent.push(byte ?? -1));
  for (let n = 1; n <= count; n++) hold(n);
  return { gate, sent, hold };
}

describe('acknowledgements that wait', () => {
  it('are let go up to the mark, in order', () => {
    const { gate, sent, hold } = gateWith(3);
    const mark = gate.mark();
    hold(4);
    gate.release(mark);
    expect(sent).toEqual([1, 2, 3]);
    expect(gate.waiting()).toBe(1);
  });

  it('are each sent once, in order, whatever order of holding and releasing', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom('hold', 'mark', 'release')), (steps) => {
        const { gate, sent, hold } = gateWith(0);
        const marks: number[] = [];
        let held = 0;
        for (const step of steps) {
          if (step === 'hold') hold(++held % 256);
          else if (step === 'mark') marks.push(gate.mark());
          else gate.release(marks.shift() ?? 0);
          expect(sent.length + gate.waiting()).toBe(held);
        }
        expect(sent).toEqual(Array.from(sent, (_, i) => (i + 1) % 256));
      }),
    );
  });

  it('of a connection that is gone are never sent', () => {
    const { gate, sent, hold } = gateWith(2);
    hold(9, {});
    gate.forget(connection);
    gate.release(gate.mark());
    expect(sent).toEqual([9]);
  });
});
