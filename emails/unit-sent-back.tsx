import { lookAtParcel } from '@/lib/jobs/rules/posting-words';
import type { FactsOf } from '@/lib/mail/rules/content';
import { showNumber } from '@/lib/numbers/job-number';
import { JobPage, type Line, Lines, Next, Para, PlainLink, Title } from './frame';
import type { Setting, Writer } from './letter';
import { leftSentence } from './money-left';
import { fullDay, money } from './words';

const KEEP_CERTIFICATE =
  'Keep the certificate: it says what is covered, until when, and how to claim. If the fault comes back, open a claim with its number. You need no receipt.';

export const unitSentBack: Writer<'unit-sent-back'> = (facts, setting) => {
  const { job } = setting;
  const { isCollected = false, isAgain = false, isAfterMistake = false, carrierReference, tracking } = facts;
  const certificate = facts.certificateNumber ? showNumber(facts.certificateNumber) : null;
  const lines: Line[] = [];
  if (facts.carrier) lines.push({ term: 'Carrier', text: facts.carrier });
  if (carrierReference) {
    lines.push({ term: 'Carrier’s reference', text: carrierReference, isMono: true });
  }
  if (tracking) lines.push({ term: 'Where it is', text: <PlainLink href={tracking} /> });
  if (certificate) {
    const revision = facts.revision && facts.revision > 1 ? ` · revision ${facts.revision}` : '';
    lines.push({ term: 'Certificate', text: `${certificate}${revision}`, isMono: true });
  }
  const how = isCollected ? 'You collected your unit today.' : `Sent with ${facts.carrier}.`;
  const stated =
    certificate && !facts.coveredUntil ? 'The certificate states when cover begins and ends.' : '';
  return {
    to: 'customer',
    subject: isCollected ? `Collected: job ${job.number}` : `On its way to you: job ${job.number}`,
    summary: certificate ? `${how} Your certificate is ${certificate}.` : how,
    body: (
      <>
        <Title>{isCollected ? 'You have your unit back' : 'Your unit is on its way back'}</Title>
        <Para>
          {isCollected
            ? 'You collected it from us today.'
            : `We have handed it to the carrier ${isAgain ? 'once more ' : ''}today.`}
          {isAfterMistake ? ` ${NOT_BEFORE}` : ''}
          {(isAgain || isAfterMistake) && certificate ? ` ${standsSentence(facts, setting)}` : ''}
        </Para>
        {lines.length > 0 ? <Lines items={lines} /> : null}
        <Next
          what={isCollected ? afterCollecting(certificate) : afterPosting(certificate)}
          when={(isCollected ? ['This job is closed.', stated] : [whereItIs(facts), stated])
            .filter((sentence) => sentence !== '')
            .join(' ')}
          costs={
            facts.owed
              ? `${leftSentence(facts.owed, setting)} It stays owed; the job page shows how to pay.`
              : `Nothing more (${money(0, setting)}).`
          }
        />
        <JobPage setting={setting}>{certificate ? 'See the job and the certificate' : 'See the job'}</JobPage>
      </>
    ),
  };
};

const NOT_BEFORE = 'When we wrote that to you before, it had not happened: that was a mistake of ours.';

function afterPosting(certificate: string | null): string {
  const look = lookAtParcel('on the job page');
  return certificate ? `${look} Then try the unit. ${KEEP_CERTIFICATE}` : look;
}

function afterCollecting(certificate: string | null): string {
  return certificate
    ? `Try the unit at home. ${KEEP_CERTIFICATE}`
    : 'Look at the unit at home, and tell us if something is wrong.';
}

/** The certificate was issued when the unit first left, or was said to have; the days since may be added to its cover. */
function standsSentence({ coveredUntil, isAgain }: FactsOf<'unit-sent-back'>, setting: Setting): string {
  const stands = `Your certificate stands as it was issued${isAgain ? ' when we first sent it' : ''}.`;
  return coveredUntil === undefined
    ? stands
    : `${stands} The days since are added: it covers until the end of ${fullDay(coveredUntil, setting)}.`;
}

/** A reference is gone from a letter once its customer's data was removed. */
function whereItIs({
  tracking,
  carrierReference,
}: {
  tracking?: string | undefined;
  carrierReference: string;
}) {
  if (tracking) return 'The carrier’s page shows where the parcel is.';
  return carrierReference ? 'The carrier’s reference shows where the parcel is.' : '';
}
