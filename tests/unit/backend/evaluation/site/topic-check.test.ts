import { describe, expect, it } from 'vitest';
import { filterCovers, filterFault, topicFault } from '../../../../../backend/src/evaluation/site/topic-check';

describe('topic filters (MQTT 3.1.1 section 4.7)', () => {
  it.each([
    // Section 4.7.1.2 and 4.7.1.3, the non-normative examples.
    ['sport/tennis/player1/#', 'sport/tennis/player1', true],
    ['sport/tennis/player1/#', 'sport/tennis/player1/ranking', true],
    ['sport/tennis/player1/#', 'sport/tennis/player1/score/wimbledon', true],
    ['sport/#', 'sport', true],
    ['#', 'a/b', true],
    ['sport/tennis/+', 'sport/tennis/player1', true],
    ['sport/tennis/+', 'sport/tennis/player1/ranking', false],
    ['sport/+', 'sport', false],
    ['sport/+', 'sport/', true],
    ['+/+', '/finance', true],
    ['/+', '/finance', true],
    ['+', '/finance', false],
    ['a/b', 'a/c', false],
  ])('%s and %s: %s', (filter, topic, covers) => {
    expect(filterCovers(filter, topic)).toBe(covers);
  });

  it.each(['sport/tennis#', 'sport/tennis/#/ranking', 'sport+', 'a/+b/c'])('refuses the filter %s', (filter) => {
    expect(filterFault(filter)).toMatch(/whole level/);
  });

  it.each(['#', '+', '+/tennis/#', 'sport/+/player1', '/finance'])('takes the filter %s', (filter) => {
    expect(filterFault(filter)).toBeNull();
  });

  it.each(['', 'a/+/b', 'a/#', 'a\u0000b', '$SYS/uptime'])('refuses %j as the topic of a message', (topic) => {
    expect(topicFault(topic)).not.toBeNull();
  });

  it.each(['a', '/a//b', 'süd/№ 1'])('takes %j as the topic of a message', (topic) => {
    expect(topicFault(topic)).toBeNull();
  });
});
