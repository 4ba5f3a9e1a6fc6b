import type { Page } from '@playwright/test';
import { docket } from './docket';

/** A quote as the customer who asked for it sees it, through its private link. */
export function quoteLink(page: Page) {
  const part = (name: string | RegExp) => page.getByRole('region', { name });
  return {
    open: (link: string) => page.goto(link),
    heading: page.getByRole('heading', { level: 1 }),
    docket: docket(page),
    done: page.getByRole('status'),
    photos: page.getByRole('list', { name: 'Your photos' }).getByRole('link'),
    question: part('What we want to know'),
    answer: page.getByRole('textbox', { name: 'Your answer' }),
    sendAnswer: page.getByRole('button', { name: 'Send the answer' }),
    price: part('Our price'),
    agreed: part('The price you agreed to'),
    paper: page.getByRole('link', { name: 'This quote (PDF)' }),
    toForm: page.getByRole('link', { name: 'European Repair Information Form' }),
    sayYes: page.getByRole('button', { name: /^Yes, repair it for/ }),
    sayNo: page.getByRole('button', { name: 'No, thank you' }),
    goOnToBook: page.getByRole('button', { name: 'Go on to book' }),
  };
}
