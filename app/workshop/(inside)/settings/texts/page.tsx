import type { Metadata } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { STAFF_NOTE } from '@/lib/warranty/rules/certificate-text';
import { requireStaff } from '../../../who';
import { saveTexts } from '../actions';
import { SettingsForm } from '../settings-form';
import { TextsPreview } from './texts-preview';

export const metadata: Metadata = { title: 'Texts' };

export default async function TextsPage() {
  await requireStaff('settings');
  const workshop = await readWorkshop();
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/settings">Settings</TextLink>}
        title="Texts"
        lead="A line that begins with # is a heading, with - an entry of a list; an empty line begins a new paragraph."
      />
      <Notice kind="note" heading="Templates, not legal advice">
        <p>{STAFF_NOTE}</p>
      </Notice>
      <SettingsForm
        action={saveTexts}
        workshop={workshop}
        save="Save texts"
        consequence="Terms and privacy stand on their pages at once. Customers who booked before agreed to the old terms, which their jobs go on showing."
        below={<TextsPreview />}
      >
        <TextArea
          name="termsText"
          label="Terms"
          hint="What customers agree to when they book. Have them read by somebody who knows the law where you trade; nothing in them may take away what the law gives your customers."
          rows={14}
          defaultValue={workshop.termsText}
        />
        <TextArea
          name="privacyText"
          label="Privacy"
          hint="What you keep about people, why, how long, and whom they can ask."
          rows={10}
          defaultValue={workshop.privacyText}
        />
        <TextArea
          name="paymentText"
          label="How to pay"
          hint="Stands where an amount is due: bank details or the address of your payment page."
          rows={4}
          defaultValue={workshop.paymentText}
        />
        <TextArea
          name="packingText"
          label="How to pack"
          hint="One line each, printed on the packing slip."
          rows={6}
          defaultValue={workshop.packingText.join('\n')}
        />
        <SubmitButton kind="second" name="intent" value="preview" label="Preview" busy="Drawing…" />
      </SettingsForm>
    </>
  );
}
