import type { Metadata } from 'next';
import { newFormKey } from '@/app/form-key';
import { readWorkshop } from '@/app/read-workshop';
import { ActionForm } from '@/app/ui/forms/action-form';
import { CheckboxGroup } from '@/app/ui/forms/choices';
import { PhotosField } from '@/app/ui/forms/photos-field';
import { Select } from '@/app/ui/forms/select';
import { SubmitBar } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { TextField } from '@/app/ui/forms/text-field';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { workingDaysWords } from '@/lib/calendar/working';
import { HISTORY } from '@/lib/jobs/rules/booking';
import { formatMoney } from '@/lib/money/amount';
import { askChoices } from '@/lib/quotes/ask-choices';
import { GENERAL_SYMPTOMS, MOST_PHOTOS } from '@/lib/quotes/rules/request-answers';
import type { WorkshopCard } from '@/lib/workshop/card';
import { ask } from './actions';

export const metadata: Metadata = {
  title: 'Ask for a price',
  description: 'Ask for the price of a repair that is not on the list. It costs nothing.',
};

type Props = { searchParams: Promise<{ model?: string | string[] }> };

/** One form for what the price list does not cover. */
export default async function AskPage({ searchParams }: Props) {
  const { model } = await searchParams;
  const { devices, chosen } = await askChoices(typeof model === 'string' ? model : undefined);
  const workshop = await readWorkshop();
  const answerWithin = workingDaysWords(workshop.answerDays);
  const symptoms = chosen && chosen.symptoms.length > 0 ? chosen.symptoms : [...GENERAL_SYMPTOMS];
  return (
    <>
      <PageHead
        above={<TextLink href="/prices">Prices</TextLink>}
        title="Ask for a price"
        lead="For what is not on the price list. Tell us what you see; you need not know what is broken."
        next={`we answer within ${answerWithin}, with a price or a question. Asking is free.`}
      />
      <ActionForm action={ask} hidden={{ formKey: newFormKey() }} label="Ask for a price">
        <Select
          name="model"
          label="Your device"
          optional
          empty="It is not on this list"
          choices={devices.map(({ id, name, family }) => ({ value: id, label: name, group: family }))}
          defaultValue={chosen?.id}
        />
        <TextField
          name="device"
          label="Maker and model"
          hint="Only if your device is not on the list above."
          optional
          maxLength={120}
        />
        <TextField
          name="serial"
          label="Serial number"
          hint="As it stands on the unit. It can wait until you book."
          optional
          mono
          autoComplete="off"
          maxLength={60}
        />
        <CheckboxGroup
          name="symptoms"
          label="What does it do, or not do?"
          optional
          choices={symptoms.map((symptom) => ({ value: symptom, label: symptom }))}
        />
        <TextArea
          name="problem"
          label="In your own words"
          hint="When it started, and whether it comes and goes, helps most."
          maxLength={2000}
          rows={5}
        />
        <CheckboxGroup
          name="history"
          label="Did any of this happen?"
          hint="Nothing you tick here is held against you. It tells us where to look."
          optional
          choices={Object.entries(HISTORY).map(([value, label]) => ({ value, label }))}
        />
        <PhotosField
          label="Photos of the damage"
          hint="The whole unit, and close up what is broken."
          most={MOST_PHOTOS}
          optional
        />
        <TextField name="name" label="Your name" autoComplete="name" maxLength={120} />
        <TextField
          name="email"
          label="E-mail address"
          hint="The answer goes there. We write only about this unit."
          type="email"
          autoComplete="email"
          maxLength={254}
        />
        <TextField
          name="phone"
          label="Telephone"
          hint="If it is easier to ask you something."
          optional
          type="tel"
          autoComplete="tel"
          maxLength={40}
        />
        <p className="max-w-[42rem]">
          {feeSentence(workshop)} What we keep of this, and for how long, is on the{' '}
          <TextLink href="/privacy">privacy page</TextLink>.
        </p>
        <SubmitBar
          label="Ask for a price"
          consequence={`Free, and you agree to nothing. We answer within ${answerWithin}.`}
          second={{ href: '/prices', label: 'Back to the price list' }}
        />
      </ActionForm>
    </>
  );
}

function feeSentence(workshop: WorkshopCard): string {
  const fee = workshop.inspectionFeeMinor;
  if (fee === 0) return 'If the unit has to be here before we can name a price, looking at it costs nothing.';
  const off = workshop.isInspectionFeeTakenOff
    ? ', and take it off the price when the repair goes ahead'
    : '';
  return `If the unit has to be here before we can name a price, looking at it costs ${formatMoney(fee, workshop.currency, workshop.locale)}. We say so before you post it${off}.`;
}
