import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { covers, isTopicFilter } from '../../../../../backend/src/access/topic-filter';
import { alarmTopic, alarmTopics } from '../../../../../backend/src/connections/alarm-publication/alarm-topic';

describe('the topic of an alarm', () => {
  it('can be read: prefix, site, and the id as it is where a topic may have it', () => {
    expect(alarmTopic('plant/ebbline', 'small', 'm1:WATER-1')).toBe('plant/ebbline/small/alarms/m1:WATER-1');
  });

  // MQTT 3.1.1, sections 4.7.1 and 4.7.3: separator and wildcards mean something, NUL is not allowed.
  it('takes nothing of an id for a separator or a wildcard', () => {
    expect(alarmTopic('e', 's', 'a/b+c#d\0e%f g')).toBe('e/s/alarms/a%2Fb%2Bc%23d%00e%25f%20g');
  });

  it('is one level below the folder of the site, whatever the id, and tells apart what differs', () => {
    const id = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(id, id, (one, other) => {
        const topic = alarmTopic('e', 's', one);
        expect(topic.split('/')).toHaveLength(4);
        expect(isTopicFilter(topic)).toBe(true);
        expect(topic).not.toMatch(/[+#\0]/);
        expect(covers(alarmTopics('e', 's'), topic)).toBe(true);
        expect(decodeURIComponent(topic.split('/')[3] ?? '')).toBe(one);
        expect(alarmTopic('e', 's', other) === topic).toBe(one === other);
      }),
    );
  });

  it('is found for text that is no well-formed Unicode, too', () => {
    expect(alarmTopic('e', 's', 'a\uD800')).toBe('e/s/alarms/a%EF%BF%BD');
  });
});
