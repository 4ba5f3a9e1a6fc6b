import type { Day } from '@/lib/calendar/day';
import type { Tx } from '@/lib/db/transaction';
import type { WorkshopCard } from '@/lib/workshop/card';
import { coverCalendar } from './cover-calendar';
import { readChain, readCoverLine } from './records';
import { type ClaimAgain, claimAgain } from './rules/claim-again';

/** Whether what a claim was opened for can be claimed again, by the certificate as it is in force. */
export async function readClaimAgain(
  claim: { certificateNumber: string; symptom: string },
  o: { workshop: Pick<WorkshopCard, 'holidayCountry' | 'holidayRegion'>; today: Day },
  tx?: Tx,
): Promise<ClaimAgain> {
  const chain = await readChain(claim.certificateNumber, tx);
  if (!chain) throw new Error('a claim stands on no certificate');
  const { held, terms } = chain;
  const lines = chain.inForce.lines.map(readCoverLine);
  const calendar = await coverCalendar({ lines, held, terms }, o, tx);
  return claimAgain({ lines, symptom: claim.symptom, today: o.today }, { held, terms, calendar });
}
