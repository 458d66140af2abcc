import type { Browser, CDPSession, Page } from 'playwright-core';
import { beforeAll, expect, inject, test } from 'vitest';
import { beginTrip, findings, launch, openFile, PHONE, pin } from './desk.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});

/** A phone in the hand of someone who has pinned an obstacle. */
async function atObstacle(): Promise<{
  page: Page;
  sensor: CDPSession;
  faults: string[];
  close: () => Promise<void>;
}> {
  const { context, page, faults } = await beginTrip(browser, inject('url'), PHONE, {
    isMobile: true,
    hasTouch: true,
  });
  const sensor = await context.newCDPSession(page);
  await openFile(page, 'quarry.gpx');
  await page.getByText('Old quarry & ridge: 2.18 km').waitFor();
  await pin(page, '0.3', /^Rutted climb/);
  return { page, sensor, faults, close: () => context.close() };
}

/** Lays the phone: degrees, as the sensor gives them. */
async function lay(sensor: CDPSession, alpha: number, beta: number, gamma: number): Promise<void> {
  await sensor.send('DeviceOrientation.setDeviceOrientationOverride', { alpha, beta, gamma });
}

test('slope and camber are read with the phone, zeroed by a turn-round, and taken back by undo', async () => {
  const { page, sensor, faults, close } = await atObstacle();
  const sheet = page.getByRole('dialog', { name: 'Read with this phone' });
  const still = sheet.getByText('Lies still.');
  await lay(sensor, 90, 2, 0.5);
  await page.getByRole('button', { name: 'Read with this phone' }).click();
  await still.waitFor();
  await sheet.getByText('it counts as paced').waitFor();
  expect(await findings(page)).toEqual([]);

  await sheet.getByRole('button', { name: 'Read, then turn round' }).click();
  await sheet.getByRole('button', { name: 'Read turned round' }).click();
  await sheet.getByText('was not turned end for end').waitFor();
  await lay(sensor, 270, -0.6, 0.3);
  await sheet.getByText('Hold still…').waitFor();
  await still.waitFor();
  await sheet.getByRole('button', { name: 'Read turned round' }).click();
  await sheet.getByText(/on level ground this phone says 0\.8°/).waitFor();

  await lay(sensor, 90, -14.3, -4.75);
  await sheet.getByText('−15.0°').waitFor();
  await sheet.getByText('−5.0°').waitFor();
  await still.waitFor();
  await sheet.getByText('it counts as taped').waitFor();
  await sheet.getByRole('button', { name: 'Take these' }).click();
  await sheet.waitFor({ state: 'hidden' });
  const box = (name: string) => page.getByLabel(name, { exact: true }).last();
  expect(await box('Slope').inputValue()).toBe('−15');
  expect(await box('Camber').inputValue()).toBe('−5');
  expect(await page.getByLabel('How slope was got').inputValue()).toBe('taped');
  expect(await page.getByLabel('How camber was got').inputValue()).toBe('taped');

  await page.getByRole('button', { name: /^Undo/ }).click();
  expect(await box('Slope').inputValue()).toBe('');
  expect(await box('Camber').inputValue()).toBe('0');

  await page.reload();
  await page.getByRole('button', { name: 'Read with this phone' }).click();
  await sheet.getByText(/Zeroed on/).waitFor();
  expect(faults).toEqual([]);
  await close();
});

test('a device without the sensor says so, and what to do instead', async () => {
  const { page, close } = await atObstacle();
  await page.getByRole('button', { name: 'Read with this phone' }).click();
  const sheet = page.getByRole('dialog', { name: 'Read with this phone' });
  await sheet.getByText('does not tell how it lies').waitFor();
  expect(await sheet.getByRole('button').allTextContents()).toEqual(['Close']);
  await page.keyboard.press('Escape');
  await sheet.waitFor({ state: 'hidden' });
  await close();
});
