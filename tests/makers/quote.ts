import { book } from '@/lib/jobs/book';
import { saveStep } from '@/lib/jobs/draft';
import { findJobByToken, findQuoteByToken } from '@/lib/jobs/private-link';
import { askForQuote } from '@/lib/quotes/ask-for-quote';
import { startBooking } from '@/lib/quotes/book-quote';
import { decideQuote } from '@/lib/quotes/decide-quote';
import { readQuote } from '@/lib/quotes/records';
import type { QuoteLine } from '@/lib/quotes/rules/lines';
import { type RequestAnswers, requestForm } from '@/lib/quotes/rules/request-answers';
import { sendQuote } from '@/lib/quotes/send-quote';
import { ADDRESS } from './job';
import { BENCH } from './workshop';

export const ASKED = {
  device: 'Tideline HW-2',
  serial: 'HW2-10480-K',
  symptoms: ['It does not charge'],
  problem: 'The socket came off the board when the cable was pulled.',
  history: ['dropped'],
  name: 'Ines Farrow',
  email: 'ines.farrow@example.org',
  phone: '07700 900412',
};

/** Asks for a price as a customer would. */
export async function makeRequest(o: {
  now: Date;
  answers?: Partial<RequestAnswers>;
  formKey?: string;
  photos?: Parameters<typeof askForQuote>[0]['photos'];
}) {
  const asked = await askForQuote({
    answers: requestForm.parse({ ...ASKED, ...o.answers }),
    photos: o.photos ?? [],
    formKey: o.formKey,
    now: o.now,
  });
  const found = asked.token === '' ? null : await findQuoteByToken(asked.token);
  return { ...asked, quoteId: found?.quoteId ?? '' };
}

/** Sends a price for it as the bench would. */
export async function makeQuote(o: {
  quoteId: string;
  repairId: string;
  now: Date;
  amount?: number;
  validDays?: number;
  customerAsked?: boolean;
  lines?: QuoteLine[];
}) {
  const { version } = await quoteNow(o.quoteId);
  return sendQuote({
    quoteId: o.quoteId,
    version,
    repairId: o.repairId,
    lines: o.lines ?? [
      {
        kind: 'labour',
        description: 'Socket rebuilt with wire',
        amount: o.amount ?? 9600,
        category: 'S',
        rateBps: 2000,
      },
    ],
    reason: 'Two pads are gone. They can be rebuilt with wire.',
    proposal: 'We fit a new socket and lay the two lost traces again.',
    workingDays: 7,
    note: '',
    validDays: o.validDays ?? 30,
    ...(o.customerAsked === undefined ? {} : { customerAsked: o.customerAsked }),
    actor: BENCH,
    now: o.now,
  });
}

export async function quoteNow(quoteId: string) {
  const quote = await readQuote({ id: quoteId });
  if (!quote) throw new Error('the quote is gone');
  return quote;
}

/** Says yes to a price that was sent and books the repair at it, as a customer would; gives the job and its draft. */
export async function bookAtQuote(o: { quoteId: string; now: Date; isStartAsked?: boolean }) {
  const { quoteId, now, isStartAsked = false } = o;
  const { revision, grossMinor } = (await quoteNow(quoteId)).revisions.at(-1) ?? {
    revision: 0,
    grossMinor: 0,
  };
  await decideQuote({ quoteId, revision, decision: 'accepted', now });
  const draftToken = await fillAtQuote({ quoteId, now });
  const booked = await book({ draftToken, shownMinor: grossMinor, isStartAsked, now });
  return { ...booked, draftToken, jobId: (await findJobByToken(booked.token))?.jobId ?? '' };
}

/** A booking begun at an accepted price, with every step filled in; gives its token. */
export async function fillAtQuote({ quoteId, now }: { quoteId: string; now: Date }): Promise<string> {
  const token = await startBooking({ quoteId, now });
  const parcel = { accessories: [], otherAccessory: '', battery: 'healthy', data: 'none' as const };
  await saveStep({ token, step: 'parcel', answers: parcel, now });
  await saveStep({ token, step: 'address', answers: ADDRESS, now });
  return token;
}
