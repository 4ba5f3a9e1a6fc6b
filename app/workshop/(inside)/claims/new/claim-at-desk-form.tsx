import { ActionForm } from '@/app/ui/forms/action-form';
import { AddressFields } from '@/app/ui/forms/address-fields';
import { RadioGroup } from '@/app/ui/forms/choices';
import { FileField } from '@/app/ui/forms/file-field';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { TextField } from '@/app/ui/forms/text-field';
import { DATA_NOT_ASKED, DATA_QUESTION } from '@/lib/jobs/rules/booking';
import { MOST_PHOTOS } from '@/lib/jobs/rules/most-photos';
import { batteryKind } from '@/lib/jobs/rules/posted-answer';
import { BATTERY_QUESTION, batteryAnswersFor } from '@/lib/parcels/rules/battery-answers';
import { newestContact } from '@/lib/warranty/newest-contact';
import type { Chain } from '@/lib/warranty/records';
import { OTHER_SYMPTOM, symptomWords } from '@/lib/warranty/rules/standing';
import type { WorkshopCard } from '@/lib/workshop/card';
import { countryChoices } from '@/lib/workshop/places';
import { openForCustomer } from './actions';

type Props = { chain: Chain; workshop: WorkshopCard; mayLookAgain: boolean };

export async function ClaimAtDeskForm({ chain: { inForce }, workshop, mayLookAgain }: Props) {
  const symptoms = [...new Set(inForce.lines.flatMap((line) => line.symptoms))];
  const batteries = batteryAnswersFor(batteryKind(inForce.job.model.battery));
  const known = await newestContact(inForce.jobId);
  return (
    <ActionForm
      action={openForCustomer.bind(null, inForce.number)}
      hidden={batteries.length === 0 ? { battery: 'none' } : {}}
      label="Open a claim"
    >
      <h2>The unit</h2>
      <RadioGroup
        name="where"
        label="Where is the unit?"
        choices={[
          { value: 'here', label: 'Here: it is taken in with the claim' },
          { value: 'posted', label: 'With the customer, who brings or posts it' },
        ]}
      />
      <TextField
        name="serial"
        label="Serial, as read from the unit"
        hint="By telephone, as the customer reads it out."
        mono
        autoComplete="off"
        width="half"
        maxLength={60}
        scan
      />
      <RadioGroup
        name="symptom"
        label="What does it do?"
        choices={[
          ...symptoms.map((symptom) => ({ value: symptom, label: symptom })),
          { value: OTHER_SYMPTOM, label: symptomWords(OTHER_SYMPTOM), hint: 'Write below what it does.' },
        ]}
      />
      <TextArea
        name="details"
        label="In the customer’s words"
        hint={`From the letter or the call. Needed with “${symptomWords(OTHER_SYMPTOM)}”.`}
        optional
        rows={4}
        maxLength={2000}
      />
      {batteries.length > 0 ? (
        <RadioGroup
          name="battery"
          label={BATTERY_QUESTION}
          hint="As you see it, or as the customer answers. Who must not post it is told so."
          choices={batteries}
        />
      ) : null}
      <RadioGroup
        name="data"
        label="The customer’s recordings and settings"
        hint="The unit may have to be reset to test it, and what is on it can be lost."
        choices={[
          ...DATA_QUESTION.choices,
          { value: DATA_NOT_ASKED, label: 'Nobody has asked: it is treated as not saved' },
        ]}
      />
      <TextArea
        name="extra"
        label="What came with the unit"
        hint="Only where it is here. One thing to a line, or with commas. The customer is told."
        optional
        rows={3}
        maxLength={2000}
      />
      <FileField
        name="photos"
        label="Photos"
        hint="Of its condition where it is here, the letter too; otherwise what the customer sent."
        optional
        most={MOST_PHOTOS}
      />
      {mayLookAgain ? (
        <TextArea
          name="reason"
          label="Why it is opened after cover had ended"
          hint="Only asked where what it does is not covered any more and the days of grace are over. For us; it stays in the history of the job."
          optional
          rows={2}
          maxLength={500}
        />
      ) : null}
      <h2>The customer</h2>
      <AddressFields
        of="customer"
        countries={countryChoices(workshop.locale)}
        emailHint="The claim and the private page go there. Compare it with what the customer says."
        defaults={known}
      />
      <SubmitButton
        label="Open the claim"
        busy="Opening…"
        consequence="Writes to the customer that we opened it for them, with their private page. Where the unit is here, also that it is taken in, with the day it is promised."
      />
    </ActionForm>
  );
}
