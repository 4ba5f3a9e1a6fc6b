import type { Metadata } from 'next';
import { Fragment } from 'react';
import { nothingHere } from '@/app/nothing-here';
import { readWorkshop } from '@/app/read-workshop';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { config } from '@/lib/config';
import { readWithdrawalRule } from '@/lib/quotes/rules/withdrawal';
import { modelForm, modelInstructions } from '@/lib/quotes/rules/withdrawal-text';
import { traderOf } from '@/lib/workshop/rules/trader';

export const metadata: Metadata = { title: 'Withdrawing from a contract' };

/** The model instructions and the model form of the law, filled in with this workshop; fit to be printed. */
export default async function WithdrawalPage() {
  const workshop = await readWorkshop();
  const rule = readWithdrawalRule(workshop.withdrawalRule);
  if (rule === 'off') nothingHere();
  const trader = traderOf(workshop);
  const form = modelForm(rule, trader);
  return (
    <>
      <PageHead
        title="Withdrawing from a contract"
        lead="If you booked as a private customer, you have 14 days to change your mind."
        next="open the private link of your job. There you see what you would owe, and withdraw with one button. The receipt comes by mail."
      />
      <div className="prose">
        <p>
          No link at hand? <TextLink href="/certificate/lost">We send it to you again</TextLink>, or use the
          form below.
        </p>
        {modelInstructions(rule, trader, `${config.appUrl}/withdrawal`).map((part) => (
          <Fragment key={part.heading}>
            <h2>{part.heading}</h2>
            {part.paragraphs.map((paragraph) => (
              <p key={paragraph}>{paragraph}</p>
            ))}
          </Fragment>
        ))}
        <h2>{form.heading}</h2>
        <p>{form.note}</p>
        <ul>
          {form.lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </div>
    </>
  );
}
