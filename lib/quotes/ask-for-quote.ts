import { unitName } from '@/lib/catalogue/rules/unit-name';
import { type Tx, transaction } from '@/lib/db/transaction';
import { createQuoteLink, newestQuoteToken } from '@/lib/jobs/private-link';
import { HISTORY } from '@/lib/jobs/rules/booking';
import { idOfSent } from '@/lib/jobs/write-once';
import type { NewPhoto } from '@/lib/jobs/write-photos';
import { queueMail } from '@/lib/mail/queue';
import { newNumber } from '@/lib/numbers/draw';
import { foldSerial } from '@/lib/numbers/serial';
import { readWorkshop } from '@/lib/workshop/records';
import { QUOTE_EVENT_DATA } from './rules/quote-events';
import { emailKey, isSameUnit, MOST_PHOTOS, type RequestAnswers } from './rules/request-answers';
import { requestMove } from './rules/request-states';
import { writeFromCustomer, writeQuotePhotos } from './write-from-customer';
import { writeQuoteEvent } from './write-quote-event';

export type Asked = {
  number: string;
  /** opens the quote; shown to whoever asked only when the quote is new, since anybody could type an address */
  token: string;
  isNew: boolean;
};

const CUSTOMER = { kind: 'customer' } as const;

type Asking = {
  answers: RequestAnswers;
  photos: readonly NewPhoto[];
  formKey?: string | undefined;
  now: Date;
};
/** `id` is that of the row which keeps it: the quote, or the message of a request that joins one. */
type Sent = Asking & { id?: string };

/**
 * A customer asks for a price. A second request of the same customer about the same unit, while the first has no price
 * yet, is added to it: its words become a message, and its photos join the others.
 *
 * Requests of one address wait for each other on a lock, so that two sent at once are still found to be one. What is
 * sent twice from one form is answered as the first time.
 */
export async function askForQuote(o: Asking): Promise<Asked> {
  const photos = o.photos.slice(0, MOST_PHOTOS);
  const sent = idOfSent(o.formKey, [o.answers, photos.map(({ sha256 }) => sha256)]);
  return transaction(async (tx) => {
    const key = emailKey(o.answers.email);
    await tx.$executeRaw`SELECT pg_advisory_xact_lock(hashtextextended(${`quote-request:${key}`}, 0))`;
    const before = await sentBefore(tx, sent.id);
    if (before) return before;
    const asking = { ...o, ...sent, photos };
    const device = await deviceOf(tx, o.answers);
    const open = await findOpen(tx, key, device, foldSerial(o.answers.serial));
    return open ? join(tx, open, device, asking) : create(tx, key, device, asking);
  });
}

/** The answer to what was sent and taken before, or null. */
async function sentBefore(tx: Tx, id: string | undefined): Promise<Asked | null> {
  if (id === undefined) return null;
  const asked = await tx.quote.findUnique({ where: { id }, select: { number: true } });
  if (asked) {
    const token = (await newestQuoteToken(tx, id)) ?? '';
    return { number: asked.number, token, isNew: token !== '' };
  }
  const message = await tx.message.findUnique({
    where: { id },
    select: { quote: { select: { number: true } } },
  });
  return message?.quote ? { number: message.quote.number, token: '', isNew: false } : null;
}

type Device = { modelId: string | null; device: string };

/** A model of the catalogue gives its own name; anything else stays as the customer wrote it. */
async function deviceOf(tx: Tx, answers: RequestAnswers): Promise<Device> {
  const model = answers.model
    ? await tx.model.findUnique({
        where: { id: answers.model },
        select: { id: true, maker: true, name: true },
      })
    : null;
  if (!model) return { modelId: null, device: answers.device };
  return { modelId: model.id, device: unitName(model) };
}

async function findOpen(tx: Tx, key: string, device: Device, serialKey: string) {
  const rows = await tx.quoteRequest.findMany({
    where: { emailKey: key, state: { in: [...requestMove('add').from] } },
    orderBy: { askedAt: 'desc' },
    select: {
      quoteId: true,
      serialKey: true,
      modelId: true,
      device: true,
      email: true,
      name: true,
      phone: true,
      serialTyped: true,
      quote: { select: { number: true } },
    },
  });
  return rows.find((row) => isSameUnit(row, { ...device, serialKey })) ?? null;
}

type Open = NonNullable<Awaited<ReturnType<typeof findOpen>>>;

async function join(tx: Tx, open: Open, device: Device, o: Sent): Promise<Asked> {
  const { quoteId } = open;
  const text = [wordsOf(o.answers), ...otherwise(open, device, o.answers)].join('\n\n');
  const { messageId } = await writeFromCustomer(tx, { ...o, quoteId, text });
  const { from, to } = requestMove('add');
  await writeQuoteEvent(tx, {
    quoteId,
    actor: CUSTOMER,
    now: o.now,
    event: { kind: 'added', data: { messageId, photos: o.photos.length } },
    expected: { states: from },
    to,
  });
  const token = (await newestQuoteToken(tx, quoteId)) ?? (await createQuoteLink(tx, quoteId, o.now));
  await queueMail(tx, { template: 'quote-joined', data: {}, to: open.email, quoteId, now: o.now });
  return { number: open.quote.number, token, isNew: false };
}

async function create(tx: Tx, key: string, device: Device, o: Sent): Promise<Asked> {
  const { answers } = o;
  const number = newNumber('Q');
  const { currency } = await readWorkshop(tx);
  const quote = await tx.quote.create({
    data: {
      ...(o.id === undefined ? {} : { id: o.id }),
      number,
      currency,
      request: {
        create: {
          state: 'asked',
          ...device,
          serialTyped: answers.serial,
          serialKey: foldSerial(answers.serial),
          symptoms: answers.symptoms,
          problem: answers.problem,
          history: answers.history,
          name: answers.name,
          email: answers.email,
          emailKey: key,
          phone: answers.phone,
          askedAt: o.now,
        },
      },
      events: {
        create: {
          version: 1,
          kind: 'asked',
          at: o.now,
          actorKind: 'customer',
          data: QUOTE_EVENT_DATA.asked.parse({ photos: o.photos.length }),
        },
      },
    },
    select: { id: true },
  });
  const quoteId = quote.id;
  await writeQuotePhotos(tx, { quoteId, photos: o.photos, now: o.now });
  const token = await createQuoteLink(tx, quoteId, o.now);
  await queueMail(tx, { template: 'quote-asked', data: {}, to: answers.email, quoteId, now: o.now });
  return { number, token, isNew: true };
}

/** What a joined request says, as one message. */
function wordsOf(answers: RequestAnswers): string {
  const told = [...answers.symptoms, ...answers.history.map((key) => HISTORY[key])];
  return [answers.problem, ...(told.length === 0 ? [] : [told.map((each) => `${each}.`).join(' ')])].join(
    '\n\n',
  );
}

/**
 * What a joined request says of the person and the unit otherwise than the first one, for whoever reads it: the first stays
 * as it is, since anybody could type an address.
 */
function otherwise(open: Open, { device }: Device, { name, phone, serial }: RequestAnswers): string[] {
  const told = [
    ['Name', name, open.name],
    ['Telephone', phone, open.phone],
    ['Device', device, open.device],
    ['Serial', serial, open.serialTyped],
  ] as const;
  const others = told.filter(([, now, before]) => now !== '' && now !== before);
  return others.length === 0
    ? []
    : [others.map(([what, now]) => `${what}, as told this time: ${now}.`).join('\n')];
}
