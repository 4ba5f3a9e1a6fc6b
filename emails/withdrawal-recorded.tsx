import { REFUND_DAYS } from '@/lib/invoices/rules/owed-back';
import { JobPage, Lines, Next, Para, Title } from './frame';
import type { Writer } from './letter';
import { replacedSentence } from './money-left';
import { ToldPart } from './told-part';
import { money } from './words';

/** The receipt of a withdrawal, with its day and time (Directive 2011/83/EU Art. 11a(4)). */
export const withdrawalRecorded: Writer<'withdrawal-recorded'> = (facts, setting) => ({
  to: 'customer',
  subject: `You have withdrawn: job ${setting.job.number}`,
  summary: 'We have your withdrawal. You need give no reason.',
  body: (
    <>
      <Title>We have your withdrawal</Title>
      <Para>
        You have withdrawn from the contract for “{setting.job.repair}”. Keep this message: it is your
        receipt.
      </Para>
      <Lines
        items={[
          { term: 'It reached us on', text: facts.at },
          { term: 'Job', text: setting.job.number },
          { term: 'Unit', text: setting.job.unit },
        ]}
      />
      <ToldPart told={facts.told} as="your withdrawal" setting={setting} />
      <Next
        what={
          facts.isAnswerDue
            ? 'We stop work. We still look at your claim again: the unit stays here until you have our answer in writing. What is covered we repair free of charge; otherwise the unit comes back as it is.'
            : facts.isHere
              ? 'We stop work, close your unit up and pack it. We write again when it is ready to go back.'
              : 'Nothing. Please do not post the unit. A parcel that is on its way already goes back to you unopened.'
        }
        when={facts.isHere ? 'Within a few days.' : 'The booking ended today.'}
        costs={`${costs(facts, (minor) => money(minor, setting))}${replacedSentence(facts.replaced, setting)}`}
      />
      <JobPage setting={setting}>See the job</JobPage>
    </>
  ),
});

function costs({ owed, refund }: { owed: number; refund: number }, shown: (minor: number) => string): string {
  const back =
    refund > 0 ? ` You get ${shown(refund)} back within ${REFUND_DAYS} days, the way you paid it.` : '';
  if (owed === 0) return `Nothing (${shown(0)}).${back}`;
  return `${shown(owed)} with tax, for the part of the work that was done. The way back is free.${back}`;
}
