import { showNumber } from '@/lib/numbers/job-number';
import { CAUSE_TOLD, CAUSES, RULINGS, type Ruling } from '@/lib/warranty/rules/causes';
import { rightsStillOpen } from '@/lib/warranty/rules/legal-rights';
import { ASK_FOR_POSTAGE, POSTAGE_STAYS } from '@/lib/warranty/rules/postage-words';
import { type AfterCover, isCoveredAtLeastPartly } from '@/lib/warranty/rules/ruling';
import { JobPage, Lines, Next, Para, Title, Words } from './frame';
import type { Setting, Writer } from './letter';
import { cost, fullDay, money } from './words';

export const claimRuled: Writer<'claim-ruled'> = (facts, setting) => {
  const claim = showNumber(facts.claimNumber);
  const ruling = RULINGS.find((known) => known === facts.ruling);
  // Better no message than a wrong ruling: it is shown as failed, and a person sees it.
  if (!ruling) throw new Error(`no words for the ruling ${facts.ruling}`);
  const cause = CAUSES.find((known) => known === facts.cause);
  const words = {
    ...wordsOf(ruling, facts.afterCover, setting),
    ...agreedWords(ruling, facts.agreedGross, setting),
  };
  return {
    to: 'customer',
    subject: `Our ruling on claim ${claim}: ${words.short}`,
    summary: words.summary,
    body: (
      <>
        <Title>{words.title}</Title>
        <Lines
          items={[
            { term: 'Claim', text: claim, isMono: true },
            { term: 'Ruling', text: words.short },
            ...(facts.afterCover ? [{ term: 'Opened', text: 'After the cover had ended' }] : []),
            ...(cause
              ? [{ term: facts.afterCover ? 'What we found' : 'Cause', text: CAUSE_TOLD[cause] }]
              : []),
          ]}
        />
        <Words from="Why, in the words of the person who looked at it">{facts.reasonText}</Words>
        <Next what={words.what} when={words.when} costs={words.costs} />
        {isCoveredAtLeastPartly(ruling) ? (
          <Para>{`${ASK_FOR_POSTAGE}, on the job page.`}</Para>
        ) : (
          <Para>{POSTAGE_STAYS}</Para>
        )}
        <JobPage setting={setting}>See the inspection and its photos</JobPage>
        {facts.mayContest ? (
          <Para>
            Do you see it another way? Tell us once, in your own words, on the job page, as long as the unit
            is with us. The owner of the workshop looks at it again and answers in writing. That is free of
            charge.
          </Para>
        ) : null}
        {ruling === 'covered' ? null : <Para>{rightsStillOpen(setting.workshop.country)}</Para>}
      </>
    ),
  };
};

type RulingWords = {
  short: string;
  title: string;
  summary: string;
  what: string;
  when: string;
  costs: string;
};

function wordsOf(ruling: Ruling, after: AfterCover | undefined, setting: Setting): RulingWords {
  const free = `free of charge (${money(0, setting)})`;
  const ready = readyBy(setting);
  switch (ruling) {
    case 'covered':
      return {
        short: 'covered',
        title: 'Your claim is covered',
        summary: 'We repair it free of charge.',
        what: 'We repair the unit, test it and send it back with a renewed certificate.',
        when: ready,
        costs: `The repair and the way back are ${free}.`,
      };
    case 'partly':
      return {
        short: 'partly covered',
        title: 'Part of your claim is covered',
        summary: 'We repair the covered part free of charge and ask you about the rest.',
        what: 'We repair the covered part. For the rest we send you a price, and you say yes or no. Both answers are fine with us.',
        when: ready,
        costs: `The covered part is ${free}. The rest costs nothing unless you say yes to a price first.`,
      };
    case 'returned-free':
      return {
        short: 'no fault found, returned free of charge',
        title: 'Your unit works on our bench',
        summary: 'We send it back free of charge.',
        what: 'We send the unit back as it is. This takes nothing from your certificate. If it fails again, open a claim again: a few photos help, and a short film sent in answer to this mail helps most.',
        when: 'Within a few days.',
        costs: `The inspection and the way back are ${free}.`,
      };
    case 'not-covered':
      if (after === 'no-fault') return { ...wordsOf('returned-free', undefined, setting), ...ENDED };
      if (after) return { ...wordsOf('not-covered', undefined, setting), ...ENDED };
      return {
        short: 'not covered by the certificate',
        title: 'The certificate does not cover this',
        summary: 'We explain why, and what is still possible.',
        what: 'You can have it repaired as a paid job: we send you a price, and you say yes or no. If you say no, we send the unit back as it is. This changes nothing about your certificate.',
        when: 'We write to you with a price and the day until which it holds. We repair nothing before you say yes.',
        costs: `The inspection is ${free}. Nothing else costs anything unless you say yes to a price first.`,
      };
  }
}

const ENDED = {
  short: 'not covered, since the cover had ended',
  title: 'The cover had ended when you opened this claim',
};

function readyBy(setting: Setting): string {
  const { promisedOn } = setting.job;
  return promisedOn
    ? `We promise it ready to go back by ${fullDay(promisedOn, setting)}.`
    : 'The job page shows the date as soon as there is one.';
}

/** A price agreed to before this ruling, which leaves it as it is; no words where there is none. */
function agreedWords(
  ruling: Ruling,
  agreedGross: number | undefined,
  setting: Setting,
): Partial<Omit<RulingWords, 'short' | 'title'>> {
  if (agreedGross === undefined) return {};
  const when = readyBy(setting);
  const pay = `${cost(agreedGross, setting)}, as you agreed. You pay when it is ready; what you have paid already counts.`;
  const free = `free of charge (${money(0, setting)})`;
  if (ruling === 'partly')
    return {
      summary: 'We repair the covered part free of charge, and the rest as you agreed.',
      what: 'We repair the covered part, and the rest at the price you agreed to.',
      when,
      costs: `The covered part is ${free}. The rest: ${pay}`,
    };
  return {
    summary: 'We explain why. The price you agreed to stands.',
    what: 'We repair it at the price you agreed to. You need to do nothing. This changes nothing about your certificate.',
    when,
    costs: `The repair: ${pay} The inspection is ${free}.`,
  };
}
