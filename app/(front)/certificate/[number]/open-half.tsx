import { Facts } from '@/app/ui/docket/facts';
import { AddressFields } from '@/app/ui/forms/address-fields';
import { RadioGroup } from '@/app/ui/forms/choices';
import { PhotosField } from '@/app/ui/forms/photos-field';
import type { Choice } from '@/app/ui/forms/select';
import { SubmitBar, SubmitButton } from '@/app/ui/forms/submit';
import { NumberText } from '@/app/ui/words/number-text';
import { DATA_QUESTION } from '@/lib/jobs/rules/booking';
import { MOST_PHOTOS } from '@/lib/jobs/rules/most-photos';
import { KEEP_POSTAGE_RECEIPT } from '@/lib/warranty/rules/postage-words';
import { OTHER_SYMPTOM as OTHER, symptomWords } from '@/lib/warranty/rules/standing';
import type { ClaimState } from './claim-state';

export const OTHER_SYMPTOM: Choice = {
  value: OTHER,
  label: symptomWords(OTHER),
  hint: 'Tell us below what it does.',
};

export type OpenHalfProps = {
  countries: readonly { value: string; label: string }[];
  batteries: readonly Choice[];
  batteryQuestion: { label: string; hint: string };
  /** a cell of ours in the unit is in doubt: it must not be posted */
  hasDoubtfulCell: boolean;
  /** an amount of nothing, as it is written in the workshop's currency */
  nothing: string;
};

/** What is left to give once a claim may be opened, with a last look at what was told before. */
export function OpenHalf(props: OpenHalfProps & { state: ClaimState }) {
  const { state, batteries, batteryQuestion, countries, nothing, hasDoubtfulCell } = props;
  const kept = (name: string) => {
    const value = state.values?.[name];
    return Array.isArray(value) ? (value[0] ?? '') : (value ?? '');
  };
  return (
    <>
      <input type="hidden" name="phase" value="open" />
      <input type="hidden" name="serial" value={kept('serial')} />
      <input type="hidden" name="symptom" value={kept('symptom')} />
      <input type="hidden" name="details" value={kept('details')} />
      <PhotosField
        label={state.needsPhoto ? 'A photo of the serial on the unit' : 'Photos of what you see'}
        optional={!state.needsPhoto}
        most={MOST_PHOTOS}
      />
      {batteries.length > 0 ? (
        <RadioGroup
          name="battery"
          label={batteryQuestion.label}
          hint={batteryQuestion.hint}
          choices={batteries}
        />
      ) : null}
      <RadioGroup name="data" {...DATA_QUESTION} />
      <h3>Where do we send it back?</h3>
      <AddressFields countries={countries} />
      <h3>What you told us</h3>
      <Facts
        items={[
          { term: 'Serial', text: <NumberText text={kept('serial')} /> },
          {
            term: 'What it does',
            text: symptomWords(kept('symptom')),
          },
          { term: 'Also', text: <span className="written">{kept('details') || 'nothing more'}</span> },
        ]}
      />
      <SubmitBar
        label="Open my claim"
        busy="Opening…"
        consequence={`${hasDoubtfulCell ? 'You get a private link. Please do not post the unit with its battery: write to us there, and we arrange how it gets here safely.' : 'You get a packing slip and a private link.'} The inspection, the covered repair and the way back are free: you pay ${nothing}. ${KEEP_POSTAGE_RECEIPT}`}
      />
      {/* After the main button, since the first one is what the Enter key presses. */}
      <SubmitButton
        kind="second"
        name="change"
        value="yes"
        label="Change what I told you"
        consequence="Back to the three questions. Nothing is sent in yet. Photos that have not arrived have to be chosen again."
      />
    </>
  );
}
