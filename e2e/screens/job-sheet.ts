import type { Locator, Page } from '@playwright/test';
import type { PhotoFile } from '../world/photo';
import { bare, docket } from './docket';
import { unfold } from './unfold';

/** The job sheet: what is known, and every action at the bench and around it. */
export function jobSheet(page: Page) {
  const inForm = (name: string) => page.getByRole('form', { name });
  const field = (form: string, name: string | RegExp) => inForm(form).getByRole('textbox', { name });
  const press = (name: string) => page.getByRole('button', { name, exact: true }).click();
  const toChangedPrice = page.getByRole('link', { name: 'Write a changed price' });
  return {
    open: (number: string) => page.goto(`/workshop/jobs/${bare(number)}`),
    docket: docket(page),
    saved: page.getByRole('status').filter({ hasText: 'Saved.' }),
    part: (name: string) => page.getByRole('region', { name }),
    move: (label: string) => page.getByRole('button', { name: label, exact: true }),
    findings: page.getByRole('list', { name: 'Findings' }),
    async addFinding(text: string, photo?: PhotoFile) {
      await unfold(page, 'Add a finding');
      await field('Add a finding', 'What did you find?').fill(text);
      if (photo)
        await inForm('Add a finding')
          .getByLabel(/^Photos/)
          .setInputFiles(photo);
      await press('Record the finding');
    },
    work: page.getByRole('list', { name: 'Work done' }),
    async addWork(text: string, minutes: number) {
      await unfold(page, 'Add work');
      await field('Add work', 'What was done?').fill(text);
      await field('Add work', 'Minutes').fill(String(minutes));
      await press('Record the work');
    },
    parts: page.getByRole('table', { name: 'Parts fitted' }),
    /** Takes pieces of the first lot in stock whose part and lot match; returns how the lot is shown. */
    async takePart(lot: RegExp): Promise<string> {
      await unfold(page, 'Take a part');
      const choice = inForm('Take a part').getByRole('option').filter({ hasText: lot }).first();
      const shown = (await choice.textContent()) ?? '';
      await inForm('Take a part').getByRole('combobox', { name: 'Part and lot' }).selectOption(shown);
      await press('Take it from stock');
      return shown;
    },
    putBack: (lot: string) =>
      page.getByRole('button', { name: new RegExp(`^Put back .*lot ${lot}$`) }).click(),
    wires: page.getByRole('table', { name: 'Jumper wires' }),
    /** A wire of the usual 0.1 mm, read in milliohms. */
    async layWire(wire: { from: string; to: string; millimetres: string; milliohms: string }) {
      await unfold(page, 'Add a jumper wire');
      const form = 'Add a jumper wire';
      await field(form, /^From/).fill(wire.from);
      await field(form, /^To/).fill(wire.to);
      await field(form, /^Length/).fill(wire.millimetres);
      await field(form, /^Reading/).fill(wire.milliohms);
      await press('Record the wire');
    },
    async settleSerial(serial: string, how: string) {
      await field('Settle the serial', 'The serial this unit carries').fill(serial);
      await field('Settle the serial', /^How it was settled/).fill(how);
      await press('Settle the serial');
    },
    async write(text: string) {
      await unfold(page, 'Write to the customer');
      await field('Message', 'Message').fill(text);
      await press('Send the message');
    },
    /** A move that is asked once more, with the reason it is kept with. */
    async moveAsked(label: string, why: string) {
      await unfold(inForm(label), label);
      await field(label, /^Why/).fill(why);
      await press(`Yes: ${label.toLowerCase()}`);
    },
    /** The unit goes back as it came. */
    async stopRepair(why: string, reason: string) {
      const label = 'Send back unrepaired';
      await unfold(inForm(label), label);
      await inForm(label).getByRole('radio', { name: why }).check();
      await field(label, /^In your words/).fill(reason);
      await press(`Yes: ${label.toLowerCase()}`);
    },
    toChangedPrice,
    writeChangedPrice: () => toChangedPrice.click(),
    /** Where a job that goes to proving leads. */
    checkSheetHead: page.getByRole('heading', { name: 'Check sheet', level: 1 }),
    openCheckSheet: () => page.getByRole('link', { name: 'Open the check sheet' }).click(),
    photos: page.getByRole('list', { name: 'Photos of this unit' }).getByRole('link'),
    owed: page.getByRole('region', { name: 'Money' }).getByRole('strong'),
    async recordPayment(amount: string, reference: string) {
      await unfold(page, 'Record a payment');
      await field('Record a payment', 'Amount').fill(amount);
      await field('Record a payment', /^Reference/).fill(reference);
      await press('Record the payment');
    },
    payments: page.getByRole('table', { name: 'Payments' }),
    dispatch: {
      ...dispatchForm(inForm('Send back')),
      answers: page.getByRole('table', { name: 'What each carrier says to this parcel' }),
    },
    async collected() {
      const label = 'The customer has collected it';
      await unfold(inForm(label), label);
      await press('Yes: it is collected');
    },
    /** What was entered by mistake is taken back, in words for the customer. */
    async undo(label: string, reason: string) {
      await unfold(inForm(label), label);
      await field(label, /^What happened/).fill(reason);
      await press(`Yes: ${label.toLowerCase()}`);
    },
    async lookForParcel(asked: string) {
      const label = 'The parcel has not come: look for it';
      await unfold(page, label);
      await field(label, /^What you asked/).fill(asked);
      await press('Look for the parcel');
    },
    async correctReference(reference: string) {
      const label = 'Correct the carrier’s reference';
      await unfold(page, label);
      await field(label, 'Carrier’s reference').fill(reference);
      await press('Correct the reference');
    },
    async cameBack(why: string) {
      const label = 'The parcel came back to us';
      await unfold(page, label);
      await field(label, 'Why it came back').fill(why);
      await press(label);
    },
    papers: page.getByRole('region', { name: 'Papers' }).getByRole('link'),
    history: page.getByRole('list', { name: 'Everything that happened to this job' }),
    messages: page.getByRole('list', { name: 'Messages' }),
    async renewLink() {
      await unfold(page, 'Renew the private link');
      await press('Yes, send a new link');
    },
  };
}

function dispatchForm(form: Locator) {
  return {
    carrier: form.getByRole('combobox', { name: 'Carrier', exact: true }),
    reference: form.getByRole('textbox', { name: 'Carrier’s reference' }),
    postage: form.getByRole('textbox', { name: /^Postage we paid/ }),
    weight: form.getByRole('textbox', { name: /^Weight, packed/ }),
    side: (name: 'Length' | 'Width' | 'Height') =>
      form.getByRole('textbox', { name: new RegExp(`^${name}, packed`) }),
    workOut: form.getByRole('button', { name: 'Work out' }),
    send: form.getByRole('button', { name: 'Send back' }),
  };
}
