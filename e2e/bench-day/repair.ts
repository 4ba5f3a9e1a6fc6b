import { changedPrice } from '../screens/changed-price';
import { checkSheet } from '../screens/check-sheet';
import { connectorSheet } from '../screens/connector-sheet';
import { bare } from '../screens/docket';
import { fact } from '../screens/fact';
import { jobList } from '../screens/job-list';
import { jobSheet } from '../screens/job-sheet';
import { waitForMail } from '../world/mailbox';
import { phonePhoto } from '../world/photo';
import { expect, test } from '../world/test';
import type { AtTheBench, People } from './people';

const JACK = '3.5 mm TRRS jack: every pin and neighbouring pair';
const CONTACT = '3.5 mm TRRS jack: worst contact';
const LEVEL = 'Difference in level, left to right';
const HOLD = 'Plug holds when the cable is tilted';
const CLOSING = ['No flux, fibres or solder balls left', 'Case closed, all screws in'];

/** Three jobs at the bench: one repaired and proved, one that fails and is redone twice, one that costs more than agreed. */
export async function workAtTheBench(
  { bench, benchPhone, front }: People,
  untilNoon: () => void,
): Promise<AtTheBench> {
  const sheet = jobSheet(bench);
  const jobs = jobList(bench);
  const checks = checkSheet(benchPhone);
  const openSheet = (number: string) => benchPhone.goto(`/workshop/jobs/${bare(number)}/sheet`);
  const closeUp = async () => {
    for (const check of CLOSING) {
      await checks.tick(check);
      await expect(checks.card(check)).toContainText('done, passed');
      await expect(checks.card(check)).not.toContainText('to be done again');
    }
    await checks.move('Proved: ready to go back').click();
    await expect(benchPhone).toHaveURL(/\/workshop\/jobs\/J\w{8}\?/);
    await expect(jobSheet(benchPhone).docket.stampNow).toContainText('Ready');
  };

  let proved = '';
  await test.step('a unit is assessed and put on the bench', async () => {
    proved = await jobs.openUnit('M4-12037-A');
    await sheet.move('Start assessing').click();
    await expect(sheet.docket.stampNow).toContainText('Assessing');
    await sheet.addFinding(
      'Left contact worn, and its pad lifted with the trace.',
      await phonePhoto('jack.jpg'),
    );
    await expect(sheet.findings).toContainText('Left contact worn');
    await sheet.move('Put on the bench').click();
    await expect(sheet.docket.stampNow).toContainText('On the bench');
  });

  await test.step('with work, a part of a known lot, and a wire that reads as its copper should', async () => {
    await sheet.addWork('Headphone socket replaced, trace of the left contact bridged.', 50);
    await expect(sheet.work).toContainText('trace of the left contact bridged. (50 min)');
    const lot = /lot (\S+)/.exec(await sheet.takePart(/LS-8120/))?.[1] ?? 'no lot';
    await expect(sheet.parts).toContainText(lot);
    await sheet.putBack(lot);
    await expect(sheet.parts).toHaveCount(0);
    await expect(sheet.part('History')).toContainText('Part put back: 1 ×');
    expect(await sheet.takePart(/LS-8120/)).toContain(lot);
    await expect(sheet.parts).toContainText(lot);
    // IEC 60028: 30 mm of 0.1 mm copper is 65.9 milliohm; with two sound joints up to 85.9.
    await sheet.layWire({ from: 'left contact', to: 'capacitor C14', millimetres: '30', milliohms: '74' });
    const wire = sheet.wires.getByRole('row', { name: /left contact to capacitor C14/ });
    await expect(wire).toContainText('as it should be');
    await sheet.move('Start proving').click();
    await expect(sheet.checkSheetHead).toBeVisible();
  });

  await test.step('and proved on its sheet, on the phone at the bench', async () => {
    const connector = connectorSheet(benchPhone);
    await openSheet(proved);
    await checks.probe(JACK);
    await expect(connector.heading).toHaveText(JACK);
    await connector.beginRight();
    await expect(connector.answer('T left', 'through')).toBeChecked();
    await connector.enter();
    await expect(checks.card(JACK)).toContainText('4 pins through');
    await checks.reading(CONTACT, '0.12');
    await expect(checks.card(CONTACT)).toContainText('0.12 Ω, passed');
    await checks.tick(HOLD);
    await expect(checks.card(HOLD)).toContainText('done, passed');
    await checks.reading(LEVEL, '0.1');
    await expect(checks.card(LEVEL)).toContainText('0.1 dB, passed');
    await checks.choose('Background noise on headphones', 'silent');
    await expect(checks.card('Background noise on headphones')).toContainText('silent, passed');
    await closeUp();
  });

  let redone = '';
  await test.step('a reading fails, the unit goes back to the bench, and is proved again', async () => {
    redone = await jobs.openUnit('MN 401 872');
    await expect(sheet.docket.stampNow).toContainText('Proving');
    await openSheet(redone);
    await checks.tick(HOLD);
    await expect(checks.card(HOLD)).toContainText('done, passed');
    await checks.reading(LEVEL, '2.4');
    await expect(checks.card(LEVEL)).toContainText('2.4 dB, failed');
    await expect(checks.move('Proved: ready to go back')).toBeHidden();
    await checks.move('Back to the bench').click();
    const onPhone = jobSheet(benchPhone);
    await expect(onPhone.docket.stampNow).toContainText('On the bench');
    await onPhone.addWork('Joint of the right contact made again.', 15);
    await expect(onPhone.work).toContainText('Joint of the right contact made again.');
    await onPhone.move('Start proving').click();
    await expect(onPhone.checkSheetHead).toBeVisible();
    await openSheet(redone);
    await checks.reading(LEVEL, '0.2');
    await expect(checks.card(LEVEL)).toContainText('0.2 dB, passed');
    await expect(checks.card(LEVEL)).toContainText('2.4 dB, failed');
    await checks.choose('Background noise on headphones', 'faint hiss');
    await expect(checks.card('Background noise on headphones')).toContainText('faint hiss, passed');
    await closeUp();
  });

  await test.step('something shows while it is packed: the work is opened again, and every check done again', async () => {
    const onPhone = jobSheet(benchPhone);
    // What was read before the work was opened again is told apart by its time.
    untilNoon();
    await onPhone.moveAsked('Open the work again', 'The left socket is loose in the case.');
    await expect(onPhone.docket.stampNow).toContainText('On the bench');
    await onPhone.addWork('Nut of the left socket made fast.', 5);
    await expect(onPhone.work).toContainText('Nut of the left socket made fast.');
    await onPhone.move('Start proving').click();
    await expect(onPhone.checkSheetHead).toBeVisible();
    await openSheet(redone);
    await expect(checks.card(LEVEL)).toContainText('to be done again');
    const connector = connectorSheet(benchPhone);
    await checks.probe(JACK);
    await connector.beginRight();
    await connector.enter();
    await expect(checks.card(JACK)).not.toContainText('to be done again');
    await checks.reading(CONTACT, '0.11');
    await expect(checks.card(CONTACT)).toContainText('0.11 Ω, passed');
    await checks.tick(HOLD);
    await expect(checks.card(HOLD)).not.toContainText('to be done again');
    await checks.reading(LEVEL, '0.2');
    await expect(checks.card(LEVEL)).not.toContainText('to be done again');
    await checks.choose('Background noise on headphones', 'silent');
    await expect(checks.card('Background noise on headphones')).toContainText('silent, passed');
    await closeUp();
  });

  let asked = '';
  await test.step('a third costs more than was agreed, and its customer is asked', async () => {
    const desk = jobSheet(front);
    const price = changedPrice(front);
    asked = await jobList(front).openUnit('2610144079');
    const email = (await fact(front, 'E-mail').textContent()) ?? '';
    await desk.writeChangedPrice();
    await price.reason.fill('The driver before the socket is weak as well.');
    await price.line(2).what.fill('Driver of the outgoing socket renewed');
    await price.line(2).amount.fill('12.00');
    await price.keep.click();
    await expect(desk.part('Money')).toContainText('written, waits for an answer');
    await desk.move('Ask for approval').click();
    await expect(desk.docket.stampNow).toContainText('Awaiting approval');
    const mail = await waitForMail(email, /^We need your yes or no/);
    expect(mail.text).toContain('£72.00 with tax');
    expect(mail.text).toContain('£12.00 more');
  });
  return { proved, redone, asked };
}
