import { certificate } from './screens/certificate';
import { changedPrice } from './screens/changed-price';
import { claimDesk } from './screens/claim-desk';
import { fact } from './screens/fact';
import { jobSheet } from './screens/job-sheet';
import { privateJob } from './screens/private-job';
import { unfold } from './screens/unfold';
import { certificateFor } from './world/certificates';
import { readMails, waitForMail } from './world/mailbox';
import { type Customer, customer } from './world/people';
import { phonePhoto } from './world/photo';
import { expect, test } from './world/test';
import { beginWarrantyDay, blame, openAndTakeIn } from './world/warranty';

// The clock is asked for so that it returns to the opening time afterwards.
test.beforeEach(({ setClock: _ }, { project }) => beginWarrantyDay(project.name));

test('a claim that is not covered is looked at twice, contested once, and teaches the bench', async ({
  page,
  workshop,
}, { project }) => {
  test.setTimeout(180_000);
  const mine = certificateFor('contested', project.name);
  const who = customer(`${project.name}.contested`);
  const job = privateJob(page);
  const bench = await workshop('bench');
  const owner = await workshop('owner');
  const desk = claimDesk(bench);
  const ownersDesk = claimDesk(owner);
  const sheet = jobSheet(bench);
  const reason = 'The corner of the case is pressed in, and the socket behind it is bent with it.';

  await test.step('a fault of another repair of this model is outside the cover, with two ways on', async () => {
    const asked = certificate(page);
    await page.goto(`/certificate/${mine.certificate}`);
    await asked.serial.fill(mine.serial);
    await asked.symptom('Display stays dark').check();
    await asked.ask.click();
    await expect(asked.answer).toContainText('This fault is not part of the cover');
    await expect(asked.answer).toContainText('“Display stays dark” is not a fault that belongs to the work');
    await expect(asked.answer).toContainText('Choose “Something else” and say why');
    await expect(asked.answer.getByRole('link', { name: 'Ask us for a price' })).toBeVisible();
    await expect(asked.openClaim).toBeHidden();
    await expect(page.getByRole('main')).not.toContainText(blame);
  });

  const { claim, number, link } = await openAndTakeIn(page, bench, mine, who);

  await test.step('without a photo, or without a reason, the ruling is refused at its field', async () => {
    await desk.open(claim);
    await desk.cause('No fault found').check();
    await desk.evidence('Clear: a photo of the inspection shows it').check();
    await desk.reason.fill(reason);
    await desk.rule.click();
    await expect(desk.causes).toHaveAccessibleDescription(/needs a photo in the inspection/);
    await expect(desk.reason).toHaveValue(reason);

    await desk.inspect('Damage on the outside', 'Yes', await phonePhoto('corner.jpg'));
    await expect(desk.inspection).toContainText('1 of 10 answered');
    await desk.cause('Damage after we sent it back').check();
    await desk.evidence('Clear: a photo of the inspection shows it').check();
    await desk.reason.fill('Dropped.');
    await desk.rule.click();
    await expect(desk.reason).toHaveAccessibleDescription(
      /Write the reason in words the customer can follow/,
    );
    await expect(desk.reason).toHaveValue('Dropped.');
    await expect(desk.cause('Damage after we sent it back')).toBeChecked();
    await expect(fact(desk.ruled, 'Ruling')).toBeHidden();
  });

  await test.step('with both it is ruled, and nobody is told yet', async () => {
    await desk.reason.fill(reason);
    await desk.rule.click();
    await expect(fact(desk.ruled, 'Ruling')).toHaveText('not covered (not told to the customer yet)');
    await expect(desk.ruled).toContainText('Waits for the owner');
    await expect(desk.confirmRuling).toBeHidden();
    await job.open(link);
    await expect(job.claim).toContainText('Our ruling is still to come');
    await expect(page.getByRole('main')).not.toContainText(reason);
    await expect(job.contest).toBeHidden();
    expect(await rulingsTold(who)).toHaveLength(0);
  });

  await test.step('the owner looks again and confirms, and the customer reads ruling and reason', async () => {
    await ownersDesk.open(claim);
    await ownersDesk.confirmRuling.click();
    await expect(fact(ownersDesk.ruled, 'Ruling')).toHaveText('not covered');
    const mail = await waitForMail(who.email, /^Our ruling on claim .* not covered by the certificate$/);
    expect(mail.text).toContain(reason);
    expect(mail.text).toContain('Tell us once');
    await sheet.open(number);
    const back = await unfold(bench, 'Return without repair');
    await back.getByRole('button', { name: 'Yes: return without repair' }).click();
    await expect(sheet.docket.stampNow).toContainText('Ready');
    await job.open(link);
    await expect(job.claim).toContainText('This is not part of the cover.');
    await expect(job.claim).toContainText(reason);
    await expect(job.claim.getByRole('list', { name: 'Photos of the inspection' })).toBeVisible();
    await expect(page.getByRole('main')).not.toContainText(blame);
  });

  const view = 'It lay in its padded bag all the time. The corner was pressed in before I first sent it.';
  await test.step('sees it another way, once, and the job goes back to assessing', async () => {
    await job.askToLookAgain(view);
    await expect(job.done).toContainText('The owner looks again and answers within 2 working days.');
    await expect(job.docket.stampNow).toContainText('Assessing');
    await expect(job.claim).toContainText('You asked us to look again.');
    await expect(job.contest).toBeHidden();
    await ownersDesk.open(claim);
    await expect(owner.getByRole('main')).toContainText(view);
    await expect(owner.getByRole('main')).toContainText('A ruling can be contested once.');
  });

  const second = 'The photo of the first arrival shows the same corner. The first damage reached the socket.';
  await test.step('looked at anew it is covered, with what would have caught it', async () => {
    await desk.open(claim);
    await desk.cause('Weakened by the first damage').check();
    await desk.evidence('Clear: a photo of the inspection shows it').check();
    await desk.reason.fill(second);
    await desk.catchQuestion.fill('Pressing each corner of the case while it charges.');
    await desk.ruleCovered();
    await expect(fact(desk.ruled, 'Ruling')).toHaveText('covered');
    expect((await waitForMail(who.email, /^Our ruling on claim .*: covered$/)).text).toContain(second);
  });

  await test.step('the owner puts that check on the sheet of the repair, which names the claim', async () => {
    const check = `Charges while each corner is pressed, claim ${claim}`;
    await ownersDesk.open(claim);
    await expect(ownersDesk.lesson).toContainText('Pressing each corner of the case while it charges.');
    await ownersDesk.teach(check);
    await expect(ownersDesk.lesson).toContainText('It is on the sheet');
    await ownersDesk.openCheckSheet();
    const taught = owner.getByRole('main').getByRole('listitem').filter({ hasText: check }).first();
    await expect(taught.getByRole('link', { name: `Learned from claim ${claim}` })).toBeVisible();
  });

  await test.step('the customer owes nothing and cannot contest again', async () => {
    await job.open(link);
    await expect(job.claim).toContainText(second);
    await expect(job.contest).toBeHidden();
    await expect(fact(job.price, 'Left to pay')).toHaveText('£0.00');
    expect(await rulingsTold(who)).toHaveLength(2);
  });
});

test('of a partly covered claim the customer declines the rest, and the covered part is repaired', async ({
  page,
  workshop,
}, { project }) => {
  test.setTimeout(180_000);
  const mine = certificateFor('partly', project.name);
  const who = customer(`${project.name}.partly`);
  const job = privateJob(page);
  const bench = await workshop('bench');
  const owner = await workshop('owner');
  const front = await workshop('front');
  const sheet = jobSheet(bench);
  const { claim, number, link } = await openAndTakeIn(page, bench, mine, who);

  await test.step('it is ruled partly covered, and the owner confirms', async () => {
    const desk = claimDesk(bench);
    await desk.open(claim);
    await desk.inspect('Damage on the outside', 'No', await phonePhoto('outside.jpg'));
    await expect(desk.inspection).toContainText('1 of 10 answered');
    await desk.cause('Our work').check();
    await desk.alsoFound('A separate fault').check();
    await desk.evidence('Clear: a photo of the inspection shows it').check();
    await desk.reason.fill(
      'A joint of ours has cracked. The fader beside it is worn, which we did not touch.',
    );
    await desk.rule.click();
    await expect(fact(desk.ruled, 'Ruling')).toHaveText('partly covered (not told to the customer yet)');
    const ownersDesk = claimDesk(owner);
    await ownersDesk.open(claim);
    await ownersDesk.confirmRuling.click();
    await expect(fact(ownersDesk.ruled, 'Ruling')).toHaveText('partly covered');
    await waitForMail(who.email, /^Our ruling on claim .*: partly covered$/);
  });

  await test.step('the rest is priced, beside the covered part', async () => {
    await sheet.open(number);
    await sheet.addFinding('The fader beside the joint is worn through.', await phonePhoto('fader.jpg'));
    await expect(sheet.findings).toContainText('worn through');
    // Prices are for the front desk and the owner: the bench is not led to a form it may not send.
    await expect(sheet.toChangedPrice).toBeHidden();
    const desk = jobSheet(front);
    await desk.open(number);
    await desk.writeChangedPrice();
    const price = changedPrice(front);
    await expect(front.getByRole('region', { name: 'The covered part' })).toContainText('£0.00');
    await price.reason.fill('The worn fader can be renewed in the same go.');
    await price.line(1).what.fill('Fader renewed');
    await price.line(1).amount.fill('24.00');
    await price.keep.click();
    await expect(desk.part('Money')).toContainText('£24.00, written, waits for an answer');
    await desk.move('Ask for approval').click();
    await expect(desk.docket.stampNow).toContainText('Awaiting approval');
    expect((await waitForMail(who.email, /^We need your yes or no/)).text).toContain('£24.00');
  });

  await test.step('the customer says no to the rest', async () => {
    await job.open(link);
    await expect(job.restOffer).toContainText('Price for the rest: £24.00');
    await expect(job.restOffer).toContainText(
      'The covered part is free: you pay £0.00 for it, whatever you answer.',
    );
    await expect(job.restOffer).toContainText('Fader renewed');
    await expect(job.restOffer).toContainText('The fader beside the joint is worn through.');
    await job.sayNoToTheRest();
    await expect(job.done).toContainText(
      'We repair the covered part, free of charge, and leave the rest as it is.',
    );
    await expect(job.docket.stampNow).toContainText('On the bench');
    await expect(fact(job.price, 'Left to pay')).toHaveText('£0.00');
  });

  await test.step('and the covered part is repaired all the same, at 0.00', async () => {
    await sheet.open(number);
    await expect(sheet.owed).toHaveText('Nothing is owed.');
    await sheet.addWork('Cracked joint made again and seen under magnification.', 20);
    await expect(sheet.work).toContainText('Cracked joint made again');
    await sheet.move('Start proving').click();
    await expect(sheet.checkSheetHead).toBeVisible();
    await job.open(link);
    await expect(job.seen).toContainText('Cracked joint made again');
    await expect(job.docket.stampNow).toContainText('Proving');
    await expect(fact(job.price, 'Left to pay')).toHaveText('£0.00');
    await expect(job.claim).toContainText('The rest we leave as it is, as you asked.');
  });
});

async function rulingsTold(who: Customer) {
  return (await readMails(who.email)).filter((mail) => mail.subject.startsWith('Our ruling on claim'));
}
