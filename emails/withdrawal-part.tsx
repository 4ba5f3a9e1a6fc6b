import { modelForm, modelInstructions, rightSentences } from '@/lib/quotes/rules/withdrawal-text';
import { Para, Words } from './frame';
import type { Setting } from './letter';
import { fullDay, money } from './words';

/** The right to withdraw in plain words: the confirmation of the contract on a durable medium repeats it (Art. 8(7)). */
export function RightToWithdraw({ setting }: { setting: Setting }) {
  const { withdrawal } = setting;
  if (!withdrawal) return null;
  const { until, isStartAsked } = withdrawal;
  const { inspectionFee = 0 } = setting.job;
  const sentences = rightSentences({
    until: fullDay(until, setting),
    isStartAsked,
    inspectionFee: inspectionFee > 0 ? money(inspectionFee, setting) : null,
  });
  return (
    <>
      <Para>{`Your right to withdraw: ${sentences.join(' ')}`}</Para>
      <Para>
        One button on the job page is enough for it. The law’s own words and its form are at the end.
      </Para>
    </>
  );
}

/** The model instructions and the model form, filled in. */
export function LawsWords({ setting }: { setting: Setting }) {
  const { withdrawal, workshop } = setting;
  if (!withdrawal) return null;
  const form = modelForm(withdrawal.rule, workshop);
  return (
    <>
      {modelInstructions(withdrawal.rule, workshop, setting.link ?? withdrawal.page).map((part) => (
        <Words key={part.heading} from={part.heading}>
          {part.paragraphs.join('\n')}
        </Words>
      ))}
      <Words from={form.heading}>{[form.note, ...form.lines].join('\n')}</Words>
    </>
  );
}
