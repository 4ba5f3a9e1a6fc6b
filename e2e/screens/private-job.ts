import type { Page } from '@playwright/test';
import { docket } from './docket';
import { unfold } from './unfold';

/** A job as its customer sees it through the private link. */
export function privateJob(page: Page) {
  const part = (name: string) => page.getByRole('region', { name });
  return {
    open: (link: string) => page.goto(link),
    heading: page.getByRole('heading', { level: 1 }),
    docket: docket(page),
    done: page.getByRole('status'),
    slip: page.getByRole('link', { name: 'Packing slip (PDF)' }),
    approval: page.getByRole('region', { name: /^New price/ }),
    sayYes: page.getByRole('button', { name: /^Yes, repair it for/ }),
    sayNo: page.getByRole('button', { name: /^No, send it back/ }),
    /** The price for what a claim does not cover. */
    restOffer: page.getByRole('region', { name: /^Price for the rest/ }),
    sayNoToTheRest: () => page.getByRole('button', { name: /^No, only the covered part/ }).click(),
    price: page.getByRole('region', { name: 'Price', exact: true }),
    certificate: part('Your certificate'),
    certificateFile: page.getByRole('link', { name: 'Certificate (PDF)' }),
    claim: part('Your claim'),
    contest: part('Your claim').getByText('I see it another way'),
    async askToLookAgain(text: string) {
      const asked = await unfold(page, 'I see it another way');
      await asked.getByRole('textbox', { name: 'How do you see it?' }).fill(text);
      await asked.getByRole('button', { name: 'Ask the owner to look again' }).click();
    },
    seen: part('What we have seen and done'),
    photos: page.getByRole('list', { name: 'Photos of your unit' }).getByRole('link'),
    messages: part('Messages'),
    message: page.getByRole('textbox', { name: 'Write to us about this unit' }),
    sendMessage: page.getByRole('button', { name: 'Send the message' }),
    reference: page.getByRole('textbox', { name: /^The number on your post receipt/ }),
    keepReference: page.getByRole('button', { name: 'Keep this number' }),
  };
}
