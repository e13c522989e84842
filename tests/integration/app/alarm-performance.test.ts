import type { Alarm } from '@ebbline/shared/contract/alarm';
import { alarmPerformanceSchema } from '@ebbline/shared/contract/alarm-performance';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { stopAfterEach } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { postJson, startApp } from './running-app';
import { connectSender } from './telemetry';

const keep = stopAfterEach();
const startMs = Date.UTC(2031, 4, 6, 7, 8, 9);

describe('the figures of alarm performance', () => {
  it('are those of the alarms that were told and seen, for the site and a hall, as JSON and as a table', async () => {
    const variables = { EBBLINE_CLOCK: 'source', EBBLINE_ALARMS_PER_DAY: '144/288' };
    const app = keep(await startApp({ variables }));
    const sender = keep(await connectSender(app.mqttUrl));
    // On the source clock that is a minute.
    for (let second = 0; second < 60; second++)
      await sender.m1(startMs + second * 1000, { leak: second < 2 ? 'dry' : 'wet' });
    const water = await until(
      async () => (await app.get<{ alarms: Alarm[] }>('/api/alarms')).alarms.find(({ entry }) => entry === 'WATER-1'),
      { what: 'the alarm' },
    );
    await app.send(`/api/alarms/${encodeURIComponent(water.id)}/acknowledge`, postJson({ operator: 'Ines' }));

    const report = alarmPerformanceSchema.parse(await app.get('/api/alarms/performance'));
    expect(report.enough).toBe(false);
    expect(report.mostFrequent.find(({ alarm }) => alarm === water.id)).toMatchObject({ unit: 'm1', annunciations: 1 });
    expect(report.acknowledging.find(({ priority }) => priority === 1)?.count).toBe(1);
    expect(report.figures.find(({ id }) => id === 'annunciationsPerDay')).toMatchObject({
      acceptable: 144,
      limit: 288,
    });
    const ofHall = alarmPerformanceSchema.parse(await app.get('/api/alarms/performance?hall=north'));
    expect(ofHall.hall).toBe('north');

    const table = await app.send('/api/alarms/performance/export?format=csv', { method: 'GET' });
    expect(table.headers.get('content-type')).toContain('text/csv');
    expect(table.headers.get('content-disposition')).toContain('.csv');
    const lines = parse<Record<string, string>>(await table.text(), { columns: true });
    expect(lines.find(({ id }) => id === water.id)).toMatchObject({ part: 'mostFrequent', value: '1' });
    const whole = await app.get('/api/alarms/performance/export?format=json');
    expect(alarmPerformanceSchema.parse(whole).annunciations).toBe(report.annunciations);
    expect((await app.send('/api/alarms/performance?hall=nowhere', { method: 'GET' })).status).toBe(404);
    expect(app.faults).toEqual([]);
  });
});
