import type { Route } from 'next';
import { routeTo } from '@/app/ui/page/route-to';
import { mayTake, type Wait } from '@/lib/jobs/rules/today';
import type { Role } from '@/lib/people/rules/roles';

type Step = Exclude<Wait, { who: 'nobody' }>['step'];

/** What the button of a row says, and the place on the job sheet it leads to. */
const STEPS: Record<Step, { label: string; place: '' | '/sheet' | `#${string}` }> = {
  'settle-serial': { label: 'Settle the serial', place: '#unit' },
  'start-assessing': { label: 'Start assessing', place: '#moves' },
  'find-and-decide': { label: 'Record findings', place: '#findings' },
  'rule-claim': { label: 'Inspect and rule', place: '' },
  'second-look': { label: 'Second look', place: '' },
  'put-on-bench': { label: 'Put on the bench', place: '#moves' },
  'return-or-offer': { label: 'Return or offer', place: '#moves' },
  'chase-part': { label: 'Is the part in?', place: '#moves' },
  'part-is-here': { label: 'Back on the bench', place: '#moves' },
  repair: { label: 'Record the work', place: '#work' },
  prove: { label: 'Prove it', place: '/sheet' },
  'send-back': { label: 'Send back', place: '#moves' },
  'pack-return': { label: 'Pack for return', place: '#moves' },
  'offer-ran-out': { label: 'Write to them', place: '#messages' },
  'hear-of-parcel': { label: 'Has it come?', place: '#moves' },
  'answer-price': { label: 'Write to them', place: '#messages' },
  'confirm-address': { label: 'Write to them', place: '#messages' },
  pay: { label: 'Record payment', place: '#money' },
  'decide-unclaimed': { label: 'Decide', place: '#moves' },
  'fetch-or-write': { label: 'Write to them', place: '#messages' },
};

type Row = { job: { number: string; claim: { number: string } | null }; wait: Wait };

/** Of a step that is somebody else's: the page is there to be read all the same. */
const TO_READ = 'Look at it';

/**
 * The one action a row waits for; claims are ruled at the claims desk, everything else is done on the job sheet. Whoever may not do it
 * is not told to.
 */
export function stepOf(row: Row, role: Role): { label: string; href: Route } | null {
  if (row.wait.who === 'nobody') return null;
  const { label, place } = STEPS[row.wait.step];
  const claim = claimAtDesk(row);
  return {
    label: mayTake(role, row.wait) ? label : TO_READ,
    href: claim ? routeTo(`/workshop/claims/${claim}`) : routeTo(`/workshop/jobs/${row.job.number}${place}`),
  };
}

/** The claim's number where the row is about the claim itself, and not about its job. */
export function claimAtDesk({ job, wait }: Row): string | null {
  if (wait.who !== 'us' || (wait.step !== 'rule-claim' && wait.step !== 'second-look')) return null;
  return job.claim?.number ?? null;
}
