import type { Frame, View } from '@ebbline/shared/contract/live-feed';
import { describe, expect, it } from 'vitest';
import { FeedDesk } from '../../../../../backend/src/connections/live-feed/feed-desk';
import type { Change, FrameBody, LiveView } from '../../../../../backend/src/ports/live-view';

/** A view that changes when the test says so, and counts how often it is built. */
function deskWith(paceMs = 0) {
  const changed = new Set<(what: Change) => void>();
  let built = 0;
  let now = 0;
  const live = {
    refusalOf: () => null,
    frame: (view: View) => ({ screen: view.screen, time: `${++built}` }) as unknown as FrameBody,
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
    desk.join(id, (frame, taken) => {
      frames.push(frame);
      held.push(taken);
    });
    return { frames, take: () => held.shift()?.(), show: (view: unknown) => desk.show(id, view, now) };
  };
  return {
    desk,
    join,
    built: () => built,
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
