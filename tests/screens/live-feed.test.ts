import { nextTick } from 'vue';
import { describe, expect, it } from 'vitest';
import { aHallFrame, aLine } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';

describe('the live feed of a screen', () => {
  it('says what it shows once it is connected, and again after a reconnect', () => {
    const server = new FakeServer();
    server.feed.show({ screen: 'hall', hall: 'east' });
    expect(server.asked).toEqual([]);
    server.connect();
    server.disconnect();
    server.connect();
    expect(server.asked).toEqual([
      { screen: 'hall', hall: 'east' },
      { screen: 'hall', hall: 'east' },
    ]);
  });

  it('sends only its newest wish', () => {
    const server = new FakeServer();
    server.feed.show({ screen: 'hall', hall: 'east' });
    server.feed.show({ screen: 'alarms' });
    server.connect();
    expect(server.asked).toEqual([{ screen: 'alarms' }]);
  });

  it('acknowledges each frame once, and not before the screen has drawn it', async () => {
    const server = new FakeServer();
    server.connect();
    server.send(aHallFrame([aLine('e1')]));
    expect(server.taken).toBe(0);
    await nextTick();
    await nextTick();
    expect(server.taken).toBe(1);
  });

  it('tells why it was refused until it asks for something else', () => {
    const server = new FakeServer();
    server.connect();
    server.refuse({ code: 'VIEW_UNKNOWN_UNIT', message: 'no unit of that name' });
    expect(server.feed.refusal.value?.code).toBe('VIEW_UNKNOWN_UNIT');
    server.feed.show({ screen: 'alarms' });
    expect(server.feed.refusal.value).toBeNull();
  });

  it.each(['VIEW_UNKNOWN_HALL', 'VIEW_UNKNOWN_UNIT', 'VIEW_UNKNOWN_POINT'] as const)(
    'asks for the alarms where the site does not have what was wished (%s), so that the page still knows them and the time',
    (code) => {
      const server = new FakeServer();
      server.feed.show({ screen: 'loop', unit: 'gone' });
      server.connect();
      server.refuse({ code, message: 'not of this site' });
      expect(server.asked).toEqual([{ screen: 'loop', unit: 'gone' }, { screen: 'alarms' }]);
      expect(server.feed.refusal.value?.code).toBe(code);
    },
  );

  it.each(['VIEW_TOO_OFTEN', 'VIEW_MALFORMED'] as const)(
    'asks for nothing else where %s is why it was refused',
    (code) => {
      const server = new FakeServer();
      server.feed.show({ screen: 'alarms' });
      server.connect();
      server.refuse({ code, message: 'not so' });
      expect(server.asked).toEqual([{ screen: 'alarms' }]);
    },
  );

  it('closes its socket', () => {
    const server = new FakeServer();
    server.feed.close();
    expect(server.closed).toBe(true);
  });
});
