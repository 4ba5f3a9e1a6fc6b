import { findQuoteByToken } from '@/lib/jobs/private-link';
import { askForQuote } from '@/lib/quotes/ask-for-quote';
import { readQuote } from '@/lib/quotes/records';
import { type RequestAnswers, requestForm } from '@/lib/quotes/rules/request-answers';
import { sendQuote } from '@/lib/quotes/send-quote';
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
}) {
  const { version } = await quoteNow(o.quoteId);
  return sendQuote({
    quoteId: o.quoteId,
    version,
    repairId: o.repairId,
    lines: [
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
