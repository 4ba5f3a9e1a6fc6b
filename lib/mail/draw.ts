import { drawLetter } from '@/emails/draw-letter';
import type { Setting } from '@/emails/letter';
import { writeLetter } from '@/emails/letters';
import { dayFromDate } from '@/lib/calendar/day';
import { workingDaysWords } from '@/lib/calendar/working';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { config } from '@/lib/config';
import { db } from '@/lib/db/client';
import type { Tx } from '@/lib/db/transaction';
import { jobAddress, newestQuoteToken, newestToken, quoteAddress } from '@/lib/jobs/private-link';
import { isRepaired, REPAIRED_BY_MOVES_TO } from '@/lib/jobs/rules/repaired';
import { showNumber } from '@/lib/numbers/job-number';
import { inspectionFeeOf } from '@/lib/quotes/rules/after-no';
import { isAgreedTo } from '@/lib/quotes/rules/agreed';
import { isInspectionOnly } from '@/lib/quotes/rules/inspection-fee';
import { readWithdrawalRule } from '@/lib/quotes/rules/withdrawal';
import { readWorkshop, type WorkshopCard } from '@/lib/workshop/records';
import { hasMailServer } from './mail-server';
import { readContent } from './rules/content';

export type MailRow = { template: string; data: unknown; jobId: string | null; quoteId?: string | null };

export type DrawnMail = {
  subject: string;
  html: string;
  text: string;
  from: { name: string; address: string };
  replyTo: string | null;
};

/**
 * Draws a queued message: its own facts, with the job or quote, the customer, the workshop and the private link read
 * again. Throws when the row holds facts of no known template, or belongs to neither a job nor a quote.
 */
export async function drawMail(row: MailRow, client: Tx = db): Promise<DrawnMail> {
  return drawAs(row, client, (setting) => setting);
}

/**
 * The same to be looked at by staff, who would act as the customer behind the private link: nothing opens it. Where no message leaves
 * it is written out, since handing it on is then the only way it reaches its customer; else even the address is left out.
 */
export async function drawForStaff(row: MailRow): Promise<DrawnMail> {
  const shown = (link: string) => (hasMailServer() ? `${new URL(link).origin}/…` : link);
  return drawAs(row, db, (setting) => ({
    ...setting,
    link: setting.link && shown(setting.link),
    isLookedAt: true,
  }));
}

async function drawAs(row: MailRow, client: Tx, as: (setting: Setting) => Setting): Promise<DrawnMail> {
  const content = readContent(row);
  const workshop = await readWorkshop(client);
  const setting = as(await readSetting(row, workshop, client));
  return { ...(await drawLetter(writeLetter(content, setting), setting)), ...senderOf(workshop) };
}

/** Who a message comes from: the workshop's name before the address that the mail server may send for. */
export function senderOf(workshop: WorkshopCard): Pick<DrawnMail, 'from' | 'replyTo'> {
  const address = /<([^>]+)>\s*$/.exec(config.mailFrom)?.[1] ?? config.mailFrom;
  return { from: { name: workshop.name, address }, replyTo: workshop.email || null };
}

async function readSetting(row: MailRow, workshop: WorkshopCard, client: Tx): Promise<Setting> {
  if (row.jobId) return settingOfJob(row.jobId, workshop, client);
  if (row.quoteId) return settingOfQuote(row.quoteId, workshop, client);
  throw new Error('a message about neither a job nor a quote has nothing to say');
}

async function settingOfQuote(quoteId: string, workshop: WorkshopCard, client: Tx): Promise<Setting> {
  const { number, request } = await client.quote.findUniqueOrThrow({
    where: { id: quoteId },
    select: {
      number: true,
      request: {
        select: {
          name: true,
          device: true,
          serialTyped: true,
          repair: { select: { name: true } },
          model: { select: { battery: true } },
        },
      },
    },
  });
  if (!request) throw new Error('a message about a quote that nobody asked for has nobody to go to');
  const token = await newestQuoteToken(client, quoteId);
  return {
    workshop: workshopPart(workshop),
    job: {
      number: showNumber(number),
      kind: 'quote',
      unit: request.device,
      serial: request.serialTyped,
      repair: request.repair?.name ?? '',
      agreed: 0,
      customer: request.name,
      promisedOn: null,
      isRepaired: false,
      hasLithiumBattery: request.model?.battery === 'lithium-ion',
    },
    link: token && quoteAddress(token),
    desk: `${config.appUrl}/workshop/quotes/${number}`,
  };
}

async function settingOfJob(jobId: string, workshop: WorkshopCard, client: Tx): Promise<Setting> {
  const job = await client.job.findUniqueOrThrow({
    where: { id: jobId },
    select: {
      number: true,
      kind: true,
      serialTyped: true,
      promisedOn: true,
      withdrawUntil: true,
      startRequestedAt: true,
      returnFeeMinor: true,
      terms: { select: { text: true } },
      customer: { select: { name: true } },
      model: { select: { maker: true, name: true, battery: true } },
      repair: { select: { name: true, workingDays: true } },
      quotes: {
        select: {
          revisions: {
            where: { state: 'accepted' },
            orderBy: { revision: 'desc' },
            take: 1,
            select: {
              grossMinor: true,
              revision: true,
              workingDays: true,
              decidedBy: true,
              isGross: true,
              lines: { select: { kind: true, amountMinor: true, taxRateBps: true } },
            },
          },
        },
      },
      events: {
        where: { toStage: { in: [...REPAIRED_BY_MOVES_TO] } },
        orderBy: { version: 'asc' },
        select: { fromStage: true, toStage: true },
      },
    },
  });
  const token = await newestToken(client, jobId);
  const agreed = job.quotes[0]?.revisions[0];
  return {
    workshop: workshopPart(workshop),
    job: {
      number: showNumber(job.number),
      kind: job.kind === 'claim' ? 'claim' : 'repair',
      unit: unitName(job.model),
      serial: job.serialTyped,
      repair: job.repair.name,
      agreed: agreed?.grossMinor ?? 0,
      returnFee: job.returnFeeMinor ?? 0,
      inspectionFee: agreed ? inspectionFeeOf(agreed.lines.map(feeLine), agreed.isGross) : 0,
      isInspection: agreed !== undefined && isInspectionOnly(agreed),
      isPriceOpen: !isAgreedTo(agreed),
      customer: job.customer.name,
      promisedOn: job.promisedOn && dayFromDate(job.promisedOn),
      ...(job.kind === 'repair' && {
        stated: {
          days: agreed?.workingDays ?? job.repair.workingDays,
          isQuoted: agreed?.workingDays != null,
        },
      }),
      isRepaired: isRepaired(job.events),
      hasLithiumBattery: job.model.battery === 'lithium-ion',
    },
    ...withdrawalPart(job, workshop),
    ...(job.terms && { terms: job.terms.text }),
    link: token && jobAddress(token),
    desk: `${config.appUrl}/workshop/jobs/${job.number}`,
  };
}

function feeLine(line: { kind: string; amountMinor: number; taxRateBps: number }) {
  return { kind: line.kind, amount: line.amountMinor, rateBps: line.taxRateBps };
}

function withdrawalPart(
  job: { withdrawUntil: Date | null; startRequestedAt: Date | null },
  workshop: WorkshopCard,
): Pick<Setting, 'withdrawal'> {
  if (!job.withdrawUntil) return {};
  return {
    withdrawal: {
      // The day was kept with the job: a rule that was turned off since takes nothing from it.
      rule: readWithdrawalRule(workshop.withdrawalRule) === 'uk' ? 'uk' : 'eu',
      until: dayFromDate(job.withdrawUntil),
      isStartAsked: job.startRequestedAt !== null,
      page: `${config.appUrl}/withdrawal`,
    },
  };
}

/** What messages say about the workshop. */
export function workshopPart(workshop: WorkshopCard): Setting['workshop'] {
  const { name, email, phone, country, locale, currency, paymentText } = workshop;
  const { bankHolder, iban, bic, payLink } = workshop;
  return {
    name,
    email,
    phone,
    country,
    locale,
    answerWithin: workingDaysWords(workshop.answerDays),
    currency,
    paymentText,
    bankHolder,
    iban,
    bic,
    payLink,
    addressLines: [...workshop.addressLines, `${workshop.town} ${workshop.postcode}`.trim()],
  };
}
