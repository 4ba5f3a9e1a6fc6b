import type { TagTone } from '@/app/ui/page/tag';
import type { Ruling } from '@/lib/warranty/rules/causes';
import type { ClaimStanding } from '@/lib/warranty/rules/claim-standing';

export const STANDING_WORDS: Record<ClaimStanding, { label: string; tone: TagTone; meaning: string }> = {
  'to-rule': { label: 'to rule on', tone: 'now', meaning: 'inspect the unit, then rule.' },
  'not-here': {
    label: 'not here yet',
    tone: 'waiting',
    meaning:
      'the customer posts or brings the unit. One that never comes is cancelled on its job sheet: until then nobody can open another claim on its certificate.',
  },
  'second-look': {
    label: 'second look',
    tone: 'warn',
    meaning: 'these are ruled other than covered. The owner looks again before the customer is told.',
  },
  contested: {
    label: 'contested',
    tone: 'warn',
    meaning: 'the customer sees it another way. Look again and rule anew.',
  },
  ruled: {
    label: 'ruled',
    tone: 'good',
    meaning: 'the customer has been told. What is done with the unit goes on from its job sheet.',
  },
  closed: { label: 'closed', tone: 'plain', meaning: 'nothing. The unit went back, or was never sent.' },
};

export const RULING_WORDS: Record<Ruling, string> = {
  covered: 'covered',
  partly: 'partly covered',
  'not-covered': 'not covered',
  'returned-free': 'returned free',
};
