import { checkSheet } from '../screens/check-sheet';
import { bare } from '../screens/docket';
import { fact } from '../screens/fact';
import { jobList } from '../screens/job-list';
import { jobSheet } from '../screens/job-sheet';
import { waitForMail } from '../world/mailbox';
import { expect, test } from '../world/test';
import type { Afternoon, People } from './people';

/** A paid unit sent back within a carrier's limits, a covered claim sent back at 0.00, and one that nobody fetches. */
export async function sendBackAndDecide(people: People): Promise<Afternoon> {
  const { front, owner } = people;
  const desk = jobSheet(front);

  let sentBack = '';
  let email = '';
  await test.step('the rest is paid, and no carrier gets a parcel that it does not take', async () => {
    sentBack = await jobList(front).openUnit('2603104775');
    email = (await fact(front, 'E-mail').textContent()) ?? '';
    await expect(desk.owed).toHaveText(/^Left to pay: £/);
    const owed = /£([\d.]+)/.exec((await desk.owed.textContent()) ?? '')?.[1] ?? 'nothing';
    await desk.recordPayment(owed, 'the other half');
    await expect(desk.owed).toHaveText('Nothing is owed.');
    await desk.dispatch.carrier.fill('Sandmouth Post');
    await desk.dispatch.reference.fill('SP-6411-9035');
    await desk.dispatch.weight.fill('2600');
    for (const [side, centimetres] of [
      ['Length', '104'],
      ['Width', '30'],
      ['Height', '20'],
    ] as const) {
      await desk.dispatch.side(side).fill(centimetres);
    }
    await desk.dispatch.send.click();
    await expect(desk.dispatch.carrier).toHaveAccessibleDescription(/100 cm/);
    await desk.dispatch.side('Length').fill('40');
    await desk.dispatch.workOut.click();
    const answer = desk.dispatch.answers.getByRole('row', { name: /^Sandmouth Post/ });
    // By volume 40 x 30 x 20 cm / 6000 is 4 kg, which is more than it weighs.
    await expect(answer).toContainText('4 kg (by volume 4 kg');
    await expect(answer).toContainText('yes, by post');
    await desk.dispatch.send.click();
    await expect(desk.docket.stampNow).toContainText('Sent back');
    expect((await waitForMail(email, /^On its way to you/)).text).toContain('SP-6411-9035');
  });

  await test.step('a wrong reference is put right, the parcel is looked for and comes back, and it is collected, at the second try', async () => {
    await desk.correctReference('SP-6411-9053');
    expect((await waitForMail(email, /^The right reference/)).text).toContain('SP-6411-9053');
    await desk.lookForParcel('They search their depot.');
    await expect(desk.history).toContainText('Parcel looked for: They search their depot.');
    expect((await waitForMail(email, /^We are looking for your parcel/)).text).toContain(
      'search their depot',
    );
    await desk.cameBack('Nobody was at home, twice.');
    await expect(desk.docket.stampNow).toContainText('Ready');
    const asked = await waitForMail(email, /^Your parcel came back/);
    expect(asked.text).toContain('Nobody was at home, twice.');
    expect(asked.text).toContain('Your certificate stands');
    await desk.collected();
    await expect(desk.docket.article).toContainText('Nothing is left to do on this job.');
    await expect(desk.history).toContainText('Collected by the customer');
    expect((await waitForMail(email, /^Collected: job/)).text).toContain('You collected it from us today.');
    await desk.undo('It has not left after all', 'The job above was meant.');
    await expect(desk.docket.stampNow).toContainText('Ready');
    const undone = await waitForMail(email, /^Your unit has not left yet/);
    expect(undone.text).toContain('The job above was meant.');
    await desk.collected();
    await expect(desk.docket.article).toContainText('Nothing is left to do on this job.');
  });

  const claim = await sendClaimBack(people);

  let setAside = '';
  await test.step('the owner decides that a unit nobody fetches is set aside', async () => {
    setAside = await jobList(front).openUnit('HS26F019U');
    await expect(desk.docket.stampNow).toContainText('Ready');
    await expect(front.getByText('Set aside as unclaimed')).toBeHidden();
    const owners = jobSheet(owner);
    await owners.open(setAside);
    const email = (await fact(owner, 'E-mail').textContent()) ?? '';
    await owners.moveAsked('Set aside as unclaimed', 'Ready and told, and no answer to two calls.');
    await expect(owners.docket.article).toContainText('Unclaimed');
    await expect(owner.getByRole('main')).toContainText('1 notice was sent');
    await expect(owners.history).toContainText('no answer to two calls');
    await waitForMail(email, new RegExp(`^Your unit is still with us: job ${setAside}`));
  });
  return { sentBack, claim, setAside };
}

/** The unit of a covered claim, with its new cell, is proved on the phone and goes back free of charge. */
async function sendClaimBack({ bench, benchPhone, front }: People): Promise<string> {
  const sheet = jobSheet(bench);
  const desk = jobSheet(front);
  const checks = checkSheet(benchPhone);
  let claim = '';

  await test.step('the unit of a covered claim is proved', async () => {
    claim = await jobList(bench).openUnit('M2-09870-E');
    await expect(bench.getByRole('main')).toContainText('Claim job');
    await sheet.move('Start proving').click();
    await expect(sheet.checkSheetHead).toBeVisible();
    await benchPhone.goto(`/workshop/jobs/${bare(claim)}/sheet`);
    await expect(benchPhone.getByRole('main')).toContainText('Lithium cells');
    for (const [check, value] of [
      ['Voltage at rest after full charge', '4.18'],
      ['Charge current at half charge', '520'],
    ] as const) {
      await checks.reading(check, value);
      await expect(checks.card(check)).toContainText(new RegExp(`${value} m?[VA], passed`));
    }
    for (const check of ['Cell flat, dry and free', 'First charge watched', 'Every control', 'Case closed']) {
      await checks.tick(check);
      await expect(checks.card(check)).toContainText('done, passed');
    }
    await checks.move('Proved: ready to go back').click();
    await expect(jobSheet(benchPhone).docket.stampNow).toContainText('Ready');
  });

  await test.step('and goes back by road at 0.00', async () => {
    await desk.open(claim);
    const email = (await fact(front, 'E-mail').textContent()) ?? '';
    await expect(desk.owed).toHaveText('Nothing is owed.');
    await desk.dispatch.carrier.fill('Fenroad Carriers');
    await desk.dispatch.reference.fill('FEN-6411-20');
    await desk.dispatch.postage.fill('4.20');
    await desk.dispatch.send.click();
    await expect(desk.docket.stampNow).toContainText('Sent back');
    const mail = await waitForMail(email, new RegExp(`^On its way to you: job ${claim}`));
    expect(mail.text).toContain('revision 2');
  });
  return claim;
}
