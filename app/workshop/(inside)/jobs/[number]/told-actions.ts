'use server';
import type { FormState } from '@/app/ui/forms/form-state';
import { withdraw } from '@/lib/jobs/withdraw';
import { Refusal } from '@/lib/outcome';
import { approveAfterNo } from '@/lib/quotes/approve-after-no';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { contestRuling } from '@/lib/warranty/contest-ruling';
import { onJob } from './action-kit';
import { toldForm } from './told-schema';

export async function writeTold(number: string, _before: FormState, formData: FormData): Promise<FormState> {
  return onJob({
    permission: 'money',
    number,
    schema: toldForm,
    formData,
    part: 'moves',
    work: async ({ data: { answer, how, on, words, revision, shownOwed = 0, seen }, ...call }) => {
      const told = { ...call, seen, told: { how, on, words } };
      if (answer === 'withdrawn') return withdraw({ ...told, shownOwed });
      if (answer === 'contested') return contestRuling({ ...told, text: words });
      if (revision === undefined) throw new Refusal('conflict', 'No price waits for an answer.');
      return answer === 'accepted-after-no'
        ? approveAfterNo({ ...told, revision })
        : decideOffer({ ...told, revision, decision: answer });
    },
  });
}
