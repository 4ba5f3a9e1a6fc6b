import type { FactsOf } from '@/lib/mail/rules/content';
import { JobPage, Next, Para, Title, Words } from './frame';
import type { Setting, Writer } from './letter';
import { standsWithoutAnswer } from './offer-lapsed';
import { cost, fullDay, money } from './words';

/** The workshop takes back a price that waits for an answer; its reason is in its own words. */
export const priceTakenBack: Writer<'price-taken-back'> = (facts, setting) => {
  const { revision, gross, reason, isFirst = false } = facts;
  return {
    to: 'customer',
    subject: `We have taken our price back: job ${setting.job.number}`,
    summary: `We asked for your yes or no to ${cost(gross, setting)}. You need not answer it any more.`,
    body: (
      <>
        <Title>We have taken our price back</Title>
        <Para>
          We asked for your yes or no to {cost(gross, setting)} (revision {revision} of the quote). You need
          not answer it any more. {standsWithoutAnswer(isFirst, setting)}
        </Para>
        <Words from={setting.workshop.name}>{reason}</Words>
        <Next
          what={`We send you a new price. ${noDearer(facts, setting)}Want the unit back as it is? Write to us on the job page.`}
          when="You hear from us within a few days. The time we waited for you is not counted in our promise."
          costs={`Nothing today (${money(0, setting)}). ${isFirst ? 'You pay nothing before you have said yes to a price.' : 'We ask you before anything costs more than you agreed to.'}`}
        />
        <JobPage setting={setting}>See the job and write to us</JobPage>
      </>
    ),
  };
};

function noDearer({ heldUntil }: FactsOf<'price-taken-back'>, setting: Setting): string {
  if (heldUntil === undefined) return '';
  return `We told you that the price holds until the end of ${fullDay(heldUntil, setting)}. Until then a new one is not higher, unless you ask for a change or we find another fault. `;
}
