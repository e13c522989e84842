import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { covers, isTopicFilter, matchesTopic } from '../../../../backend/src/access/topic-filter';

/** OASIS, MQTT Version 3.1.1 (2014), sections 4.7.1.2, 4.7.1.3 and 4.7.2, examples and normative statements; from memory. */
const examples: readonly (readonly [filter: string, topic: string, matches: boolean])[] = [
  ['sport/tennis/player1/#', 'sport/tennis/player1', true],
  ['sport/tennis/player1/#', 'sport/tennis/player1/ranking', true],
  ['sport/tennis/player1/#', 'sport/tennis/player1/score/wimbledon', true],
  ['sport/#', 'sport', true],
  ['#', 'sport/tennis', true],
  ['sport/tennis/+', 'sport/tennis/player1', true],
  ['sport/tennis/+', 'sport/tennis/player2', true],
  ['sport/tennis/+', 'sport/tennis/player1/ranking', false],
  ['sport/+', 'sport', false],
  ['sport/+', 'sport/', true],
  ['+/+', '/finance', true],
  ['/+', '/finance', true],
  ['+', '/finance', false],
  ['#', '$SYS/uptime', false],
  ['+/monitor/Clients', '$SYS/monitor/Clients', false],
  ['$SYS/#', '$SYS/uptime', true],
  ['$SYS/monitor/+', '$SYS/monitor/Clients', true],
  ['ACCOUNTS', 'Accounts', false],
];

const wellFormed: readonly (readonly [filter: string, valid: boolean])[] = [
  ['#', true],
  ['sport/tennis/#', true],
  ['sport/tennis#', false],
  ['sport/tennis/#/ranking', false],
  ['+', true],
  ['+/tennis/#', true],
  ['sport+', false],
  ['sport/+/player1', true],
  ['', false],
  ['/', true],
  ['a\0b', false],
  ['a'.repeat(65_535), true],
  ['ü'.repeat(32_768), false],
];

/** The same question by a search through all the ways to read a filter, level by level. */
function matchesNaively(filter: readonly string[], topic: readonly string[], first = true): boolean {
  const [level, ...rest] = filter;
  if (level === undefined) return topic.length === 0;
  const hidden = first && topic[0]?.startsWith('$') === true;
  if (level === '#') return !hidden;
  const [word, ...words] = topic;
  if (word === undefined) return false;
  return (level === '+' ? !hidden : level === word) && matchesNaively(rest, words, false);
}

const word = fc.constantFrom('a', 'b', '', '$own', 'a+');
const name = fc.array(
  word.map((one) => one.replace('+', 'x')),
  { minLength: 1, maxLength: 4 },
);
const filter = fc
  .tuple(fc.array(fc.constantFrom('a', 'b', '', '$own', '+'), { minLength: 0, maxLength: 4 }), fc.boolean())
  .map(([levels, open]) => [...levels, ...(open || levels.length === 0 ? ['#'] : [])].join('/'))
  .filter((text) => text !== '');

describe('a topic filter', () => {
  it.for(examples)('%s matches %s: %s', ([one, topic, matches]) => {
    expect(matchesTopic(one, topic)).toBe(matches);
  });

  it.for(wellFormed)('is one, or not: %s', ([text, valid]) => {
    expect(isTopicFilter(text)).toBe(valid);
  });

  it('matches what a search by the text of the standard matches', () => {
    fc.assert(
      fc.property(filter, name, (one, topic) => {
        expect(matchesTopic(one, topic.join('/'))).toBe(matchesNaively(one.split('/'), topic));
      }),
      { numRuns: 2000 },
    );
  });

  it('covers another one only if it matches every topic that the other matches', () => {
    fc.assert(
      fc.property(filter, filter, name, (allowed, asked, topic) => {
        if (!covers(allowed, asked)) return;
        if (matchesNaively(asked.split('/'), topic)) expect(matchesNaively(allowed.split('/'), topic)).toBe(true);
      }),
      { numRuns: 5000 },
    );
  });

  it('covers itself, and all is covered by # but what is the broker’s own', () => {
    fc.assert(
      fc.property(filter, (one) => {
        expect(covers(one, one)).toBe(true);
        expect(covers('#', one)).toBe(!one.startsWith('$'));
      }),
    );
    expect(covers('hall/+', 'hall/#')).toBe(false);
    expect(covers('hall/#', 'hall/+/n1')).toBe(true);
    expect(covers('hall/+', 'hall/n1')).toBe(true);
    expect(covers('hall/n1', 'hall/+')).toBe(false);
  });
});
