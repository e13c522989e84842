import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { launchBrowser } from '../../helpers/browser';
import { suiteNeeding } from '../../helpers/requirements';
import { linkIn } from '../../helpers/sign-in';
import { stopAfterAll } from '../../helpers/stop-after';
import { axeViolations } from './axe-violations';
import { startSmallHall } from './small-hall';

suiteNeeding(['chromium'], 'a site that is no demo, from its first start', () => {
  const keep = stopAfterAll();

  test('the first admin comes in by the printed link and lets an operator in, who chooses a password, acknowledges, and is shut out with what was typed still there', async () => {
    const hall = keep(await startSmallHall());
    hall.change({ leak: 'wet' });
    const { browser } = keep(await launchBrowser());
    /** Each person has a browser of their own. */
    const open = async (address: string): Promise<Page> => {
      const context = await browser.newContext({ viewport: { width: 1440, height: 1000 } });
      context.setDefaultTimeout(90_000);
      const page = await context.newPage();
      await page.goto(new URL(address, hall.ebbline.url).href);
      return page;
    };
    const choosePassword = async (page: Page, password: string): Promise<void> => {
      await page.getByLabel('Password', { exact: true }).fill(password);
      await page.getByRole('button', { name: 'Set the password and sign in' }).click();
    };

    // Nobody looks without a sign-in, and nobody can sign in yet.
    const stranger = await open('/alarms');
    await stranger.waitForURL(/\/sign-in\?next=\/alarms$/);
    await stranger.getByText('printed a link for the first admin').waitFor();
    expect(await axeViolations(stranger)).toEqual([]);

    const admin = await open(`/set-up#${linkIn(hall.ebbline.output()) ?? ''}`);
    await admin.getByLabel('Your name').fill('Berta Example');
    expect(admin.url()).not.toContain('#');
    expect(await axeViolations(admin)).toEqual([]);
    await choosePassword(admin, 'seven green herons wade');
    const people = admin.getByTestId('people');
    await people.getByRole('button', { name: 'Add a person…' }).click();
    await people.getByLabel(/^Name/).fill('Otto Operator');
    await people.getByLabel('Role').selectOption('operator');
    await people.getByRole('button', { name: 'Add', exact: true }).click();
    const link = await people.getByLabel('Link for Otto Operator').inputValue();
    expect(await axeViolations(admin)).toEqual([]);
    await people.getByRole('button', { name: 'Put away' }).click();

    const operator = await open(link);
    await operator.getByRole('heading', { name: 'Choose your password' }).waitFor();
    await choosePassword(operator, 'nine quiet otters drift');
    await operator.getByTestId('account').getByText('Otto Operator').waitFor();
    await operator.getByRole('link', { name: /^Alarms/ }).click();
    const card = operator.getByTestId('alarm-m1:WATER-1');
    await card.getByRole('button', { name: 'Acknowledge…' }).click();
    await card.getByText('as Otto Operator').waitFor();
    await card.getByRole('button', { name: 'Acknowledge', exact: true }).click();
    await card.getByTestId('acknowledged-by').getByText('Otto Operator').waitFor();

    // A form is half filled in when the admin shuts its writer out.
    await operator.goto(`${hall.ebbline.url}/units/m1`);
    await operator.getByRole('button', { name: 'Open a permit…' }).click();
    const form = operator.getByRole('form', { name: /^Open a permit/ });
    await form.getByLabel(/^Comment/).fill('hose 4');
    const line = people.getByTestId('person-Otto Operator');
    await line.getByRole('button', { name: /^Change/ }).click();
    await line.getByRole('button', { name: 'Shut out' }).click();
    await line.getByLabel(/^Why/).fill('left the site');
    await line.locator('button[type=submit]').click();
    await line.getByText('shut out').waitFor();
    await operator.getByTestId('signed-out').getByText('The sign-in of Otto Operator has ended').waitFor();
    expect(await form.getByLabel(/^Comment/).inputValue()).toBe('hose 4');
    expect(await form.getByRole('button', { name: 'Open permit' }).isDisabled()).toBe(true);
    expect(await axeViolations(operator)).toEqual([]);
  });
});
