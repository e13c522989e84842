import type { PointList } from '@ebbline/shared/contract/http-api';
import { expect, test } from 'vitest';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterAll } from '../../helpers/stop-after';
import { openPage } from './open-page';
import { columnsOf, longestRun, near, pictureOf } from './picture';
import { startSmallHall } from './small-hall';
import { tokenColour } from './token-colour';

suiteNeeding(['chromium'], 'the pressure window', () => {
  const keep = stopAfterAll();

  test.for(['light', 'dark'] as const)('has its edges where the API says, to one pixel (%s)', async (colorScheme) => {
    const hall = keep(await startSmallHall());
    const { browser, page } = keep(await openPage(hall.ebbline.url, { colorScheme }));
    const strip = page.getByTestId('strip-m1');
    await page.getByTestId('strip-m1-bar').waitFor();

    const list = await hall.ebbline.get<PointList>('/api/units/m1/points');
    const value = (id: string): number => list.points.find((point) => point.id === id)?.value ?? Number.NaN;
    const ambientPa = value('ambient.pressure');
    expect(ambientPa).toBeCloseTo(101_325, 6);
    const highestPa = ambientPa - value('vacuumMargin');

    const axis = await strip.evaluate((svg) => Object.fromEntries(Object.entries((svg as SVGElement).dataset)));
    const box = await strip.boundingBox();
    if (box === null) throw new Error('the strip is not shown');
    const axisNumber = (key: string): number => Number(axis[key]);
    const perPa = (axisNumber('axisX1') - axisNumber('axisX0')) / (axisNumber('axisMaxPa') - axisNumber('axisMinPa'));
    const placeOf = (pa: number): number => box.x + axisNumber('axisX0') + (pa - axisNumber('axisMinPa')) * perPa;

    const picture = await pictureOf(browser, strip);
    const water = near(await tokenColour(page, '--water'));
    const paper = near(await tokenColour(page, '--paper'), 4);
    const [barLeft, barRight] = longestRun(columnsOf(picture, box.y + box.height / 2, water));
    // Above the bar stand the two banks alone, with paper between them.
    const [wallEdge, ambientEdge] = longestRun(columnsOf(picture, box.y + 3, paper));

    expect(Math.abs(ambientEdge - placeOf(ambientPa))).toBeLessThanOrEqual(1);
    expect(Math.abs(barRight - placeOf(highestPa))).toBeLessThanOrEqual(1);
    const lowestPa = axisNumber('axisMinPa') + (barLeft - box.x - axisNumber('axisX0')) / perPa;
    const wallPa = lowestPa - value('lowerWallMargin');
    // The API tells the distance from bar to wall: the rounding of two pixels adds up.
    expect(Math.abs(wallEdge - placeOf(wallPa))).toBeLessThanOrEqual(2);
    // The picture is of use: a pixel is much less than what it shows.
    expect(perPa * 1000).toBeGreaterThan(2);
    expect(barRight - barLeft).toBeGreaterThan(20);
  });
});
