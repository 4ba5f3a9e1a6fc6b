import { expect, type Page } from '@playwright/test';
import type { PhotoFile } from '../world/photo';
import { bare, docket } from './docket';
import { unfold } from './unfold';

/** One claim at the claims desk: first repair and returned unit side by side, the inspection, the ruling. */
export function claimDesk(page: Page) {
  const ruling = page.getByRole('form', { name: 'Rule on the claim' });
  const pick = (question: string, choice: string) =>
    ruling.getByRole('group', { name: question }).getByRole('radio', { name: choice });
  const inspection = page.getByRole('region', { name: 'Inspection' });
  const lesson = page.getByRole('region', { name: 'What would have caught this' });
  return {
    open: (number: string) => page.goto(`/workshop/claims/${bare(number)}`),
    docket: docket(page),
    compare: page.getByRole('region', { name: 'Side by side' }),
    readings: page.getByRole('table', { name: 'Readings at the repair and now' }),
    inspection,
    async inspect(item: string, answer: 'Yes' | 'No' | 'Unclear', photo: PhotoFile) {
      const part = await unfold(inspection, item);
      await part.getByRole('radio', { name: answer, exact: true }).check();
      await part.getByLabel(/^Photo/).setInputFiles(photo);
      await part.getByRole('button', { name: 'Keep the answer' }).click();
    },
    causes: ruling.getByRole('group', { name: 'What caused it?' }),
    cause: (label: string) => pick('What caused it?', label),
    alsoFound: (label: string) => pick('Was something else found besides', label),
    evidence: (label: string) => pick('Is the evidence clear?', label),
    reason: ruling.getByRole('textbox', { name: /^The reason, for the customer/ }),
    catchQuestion: ruling.getByRole('textbox', { name: /^What would have caught this/ }),
    rule: ruling.getByRole('button', { name: 'Rule on the claim' }),
    /** Rules on what is covered, which is asked about once. */
    async ruleCovered() {
      await ruling.getByRole('button', { name: 'Rule on the claim' }).click();
      const tick = ruling.getByRole('checkbox', { name: 'It is covered: tell the customer now' });
      await expect(tick).toHaveAccessibleDescription(/The customer is told at once/);
      await tick.check();
      await ruling.getByRole('button', { name: 'Rule on the claim' }).click();
    },
    confirmRuling: page
      .getByRole('form', { name: 'Second look' })
      .getByRole('button', { name: 'Confirm the ruling' }),
    ruled: page.getByRole('region', { name: 'Ruling' }),
    lesson,
    /** Puts a check to tick on the sheet of the claim's repair. */
    async teach(check: string) {
      const part = await unfold(lesson, 'Put a check on the sheet');
      await part.getByRole('textbox', { name: 'What is checked' }).fill(check);
      await part.getByRole('button', { name: 'Put it on the sheet' }).click();
    },
    openCheckSheet: () => lesson.getByRole('link', { name: /^Check sheet of/ }).click(),
    cost: page.getByRole('region', { name: /^What it has cost us/ }),
  };
}
