import type { Frame, View, ViewRefusal } from '@ebbline/shared/contract/live-feed';
import { describe, expect, it } from 'vitest';
import { FeedDesk } from '../../../../../backend/src/connections/live-feed/feed-desk';
import type { Change, FrameBody, LiveView } from '../../../../../backend/src/ports/live-view';

/** A view that changes when the test says so, and counts how often it is built. */
function deskWith(paceMs = 0) {
  const changed = new Set<(what: Change) => void>();
  let built = 0;
  let now = 0;
  let isGone = false;
  const live = {
    refusalOf: () => (isGone ? { code: 'HALL_UNKNOWN', message: 'gone' } : null),
    frame: (view: View) => {
      if (isGone) throw new RangeError('ask refusalOf first');
      return { ...view, time: `${++built}` } as unknown as FrameBody;
    },
    watch: () => {
      let what: Change = 'values';
      changed.add((next) => void (what = next));
      return {
        changed: () => {
          const was = what;
          what = 'nothing';
          return was;
        },
        paceMs: () => paceMs,
      };
    },
  } as unknown as LiveView;
  const desk = new FeedDesk(live);
  const join = (id: string) => {
    const frames: Frame[] = [];
    const held: (() => void)[] = [];
    const refusals: ViewRefusal[] = [];
    desk.join(
      id,
      (frame, taken) => {
        frames.push(frame);
        held.push(taken);
      },
      (refusal) => refusals.push(refusal),
    );
    return { frames, refusals, take: () => held.shift()?.(), show: (view: unknown) => desk.show(id, view, now) };
  };
  return {
    desk,
    join,
    built: () => built,
    gone: () => (isGone = true),
    change: (what: Change = 'values') => changed.forEach((mark) => mark(what)),
    look: (afterMs = 100) => desk.look((now += afterMs)),
  };
}

const alarms: View = { screen: 'alarms' };

describe('the desk of the live feed', () => {
  it('sends a snapshot at once, and then nothing while nothing changes', () => {
    const { join, look } = deskWith();
    const client = join('a');
    expect(client.show(alarms)).toBeNull();
    expect(client.frames).toHaveLength(1);
    client.take();
    for (let i = 0; i < 9; i++) look();
    expect(client.frames).toHaveLength(1);
    look();
    expect(client.frames).toHaveLength(2);
  });

  it('keeps one frame in flight, counts what was replaced, and sends the newest when the client is ready', () => {
    const { join, look, change } = deskWith();
    const client = join('a');
    client.show(alarms);
    for (let i = 0; i < 1000; i++) {
      change();
      look();
    }
    expect(client.frames).toHaveLength(1);
    client.take();
    expect(client.frames.map(({ sequence }) => sequence)).toEqual([1, 1001]);
    client.take();
    expect(client.frames).toHaveLength(2);
  });

  it('tells newer values of a large hall no sooner than its pace, news sooner, and all to who comes', () => {
    const { desk, join, look, change } = deskWith(1000);
    const client = join('a');
    client.show(alarms);
    client.take();
    for (let i = 0; i < 9; i++) {
      change();
      look();
    }
    expect(client.frames).toHaveLength(1);
    const late = join('b');
    change();
    late.show(alarms);
    expect(late.frames).toHaveLength(1);
    desk.leave('b');
    look();
    client.take();
    const before = client.frames.length;
    change('news');
    look();
    expect(client.frames).toHaveLength(before);
    change();
    look();
    look();
    expect(client.frames).toHaveLength(before + 1);
  });

  it('gives who asks again and again no more pictures of a large hall than its pace, and always the newest that it asked for', () => {
    const { join, look, change, built } = deskWith(1000);
    const client = join('a');
    const halls = ['x', 'y'].map((hall): View => ({ screen: 'hall', hall }));
    let asked = 0;
    for (let i = 0; i < 100; i += 1) {
      for (let again = 0; again < 20; again += 1) {
        expect(client.show(halls[(asked += 1) % 2])).toBeNull();
        client.take();
      }
      change();
      look();
      client.take();
    }
    // Ten seconds, and the few that it may have ahead.
    expect(client.frames.length).toBeGreaterThan(10);
    expect(client.frames.length).toBeLessThan(16);
    expect(built()).toBeLessThan(16);
    const last: View = { screen: 'loop', unit: 'm1' };
    client.show(last);
    for (let i = 0; i < 11; i += 1) {
      look();
      client.take();
    }
    expect(client.frames.at(-1)).toMatchObject(last);
  });

  it('shows the first picture at once, and so each of a few that are asked for quickly one after another', () => {
    const { join } = deskWith(1000);
    const client = join('a');
    for (const hall of ['x', 'y', 'z', 'x']) {
      client.show({ screen: 'hall', hall });
      expect(client.frames.at(-1)).toMatchObject({ hall });
      client.take();
    }
    expect(client.frames).toHaveLength(4);
  });

  it('sends all who look at a large hall no frame more, however many come within a quarter of its pace', () => {
    const { join, look, change } = deskWith(1000);
    const client = join('a');
    client.show(alarms);
    client.take();
    for (let i = 0; i < 10; i += 1) {
      change();
      const other = join(`b${i}`);
      other.show(alarms);
      expect(other.frames).toHaveLength(1);
      if (i % 5 === 4) look(50);
      client.take();
    }
    expect(client.frames).toHaveLength(1);
  });

  it('refuses a view that is gone by the time at which it may be shown', () => {
    const { join, look, gone } = deskWith(1000);
    const client = join('a');
    for (let i = 0; i < 9; i += 1) client.show({ screen: 'hall', hall: `${i}` });
    expect(client.refusals).toEqual([]);
    gone();
    for (let i = 0; i < 11; i += 1) look();
    expect(client.refusals.map(({ code }) => code)).toContain('HALL_UNKNOWN');
  });

  it('refuses a view that goes while a frame is in flight, as soon as the client has taken it', () => {
    const { join, look, change, gone, built } = deskWith();
    const client = join('a');
    client.show({ screen: 'loop', unit: 'm1' });
    change();
    look();
    gone();
    const before = built();
    expect(() => client.take()).not.toThrow();
    expect(client.refusals.map(({ code }) => code)).toEqual(['HALL_UNKNOWN']);
    look();
    expect(client.refusals).toHaveLength(1);
    expect(built()).toBe(before);
  });

  it('builds a frame once for all who look at the same', () => {
    const { join, look, change, built } = deskWith();
    const clients = ['a', 'b', 'c'].map(join);
    for (const client of clients) client.show(alarms);
    for (const client of clients) client.take();
    const before = built();
    change();
    look();
    expect(built()).toBe(before + 1);
    expect(clients.map(({ frames }) => frames.at(-1)?.time)).toEqual(Array(3).fill(`${before + 1}`));
  });

  it('forgets a view that nobody looks at any more, and a client that has left', () => {
    const { desk, join, look, change, built } = deskWith();
    const client = join('a');
    client.show({ screen: 'hall', hall: 'x' });
    client.take();
    client.show(alarms);
    client.take();
    const before = built();
    change();
    look();
    expect(built()).toBe(before + 1);
    client.take();
    desk.leave('a');
    change();
    look();
    expect(built()).toBe(before + 1);
    expect(client.show(alarms)).toBeNull();
    expect(built()).toBe(before + 1);
  });
});
