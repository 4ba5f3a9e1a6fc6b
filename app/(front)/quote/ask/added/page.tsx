import type { Metadata } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { LinkButton } from '@/app/ui/page/button';
import { PageHead } from '@/app/ui/page/page-head';
import { workingDaysWords } from '@/lib/calendar/working';
import { ifMailed } from '@/lib/mail/mail-server';

export const metadata: Metadata = { title: 'Added to your request', robots: { index: false } };

/** After a request that was joined to an earlier one. It shows nothing of that one: anybody could have typed the address. */
export default async function AddedPage() {
  const { answerDays } = await readWorkshop();
  return (
    <>
      <PageHead
        title="Added to your request"
        lead="You had asked us about this unit before, and we had not sent a price yet. We put what you sent now with what you sent then."
        next={`we read both together and answer within ${workingDaysWords(answerDays)}, with a price or a question. Asking is free.`}
      />
      <p>
        {ifMailed(
          'We have sent you a mail with the private link to your request. If it has not come in a few minutes, look among the unwanted mail.',
          'We send no mail yet, so we write to the address you gave by hand. It also stands on the page of your first request, whose address we asked you to keep.',
        )}
      </p>
      <p className="page-actions">
        <LinkButton href="/prices" kind="second">
          To the price list
        </LinkButton>
      </p>
    </>
  );
}
