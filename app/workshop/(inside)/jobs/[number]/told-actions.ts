'use server';
import type { FormAction } from '@/app/ui/forms/form-state';
import { withdraw } from '@/lib/jobs/withdraw';
import { Refusal } from '@/lib/outcome';
import { approveAfterNo } from '@/lib/quotes/approve-after-no';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { contestRuling } from '@/lib/warranty/contest-ruling';
import { onJob } from './action-kit';
import { toldForm } from './told-schema';

export const writeTold: FormAction<[number: string]> = async (number, _before, formData) =>
  onJob(number, formData, {
    permission: 'money',
    schema: toldForm,
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
