import type { Metadata, Route } from 'next';
import type { ReactNode } from 'react';
import { readWorkshop } from '@/app/read-workshop';
import { type Fact, Facts } from '@/app/ui/docket/facts';
import { LinkButton } from '@/app/ui/page/button';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { listBackups } from '@/lib/backup/records';
import { formatInstant } from '@/lib/calendar/format';
import { workingDaysWords } from '@/lib/calendar/working';
import { showIban } from '@/lib/invoices/rules/bank';
import { hasMailServer } from '@/lib/mail/mail-server';
import { formatMoney } from '@/lib/money/amount';
import { carriersInUse } from '@/lib/parcels/records';
import { isUnnamed } from '@/lib/people/rules/unnamed';
import { readFirstSteps } from '@/lib/workshop/first-steps';
import { countryChoices, holidayChoices, holidayPlace } from '@/lib/workshop/places';
import { readClosingDays } from '@/lib/workshop/records';
import { postalLines } from '@/lib/workshop/rules/letterhead';
import { requireStaff } from '../../who';
import { MissingNotice } from '../missing-notice';

export const metadata: Metadata = { title: 'Settings' };

export default async function SettingsPage({ searchParams }: { searchParams: Promise<{ saved?: string }> }) {
  const who = await requireStaff('settings');
  const { saved } = await searchParams;
  const [workshop, closing, carriers, [lastBackup]] = await Promise.all([
    readWorkshop(),
    readClosingDays(),
    carriersInUse(),
    listBackups(),
  ]);
  // Whoever is setting the workshop up goes on from here, not by way of Today.
  const toDo =
    saved === undefined
      ? null
      : await readFirstSteps(workshop, {
          hasOpenJobs: false,
          hasMailServer: hasMailServer(),
          unnamedId: isUnnamed(who) ? who.id : null,
        });
  const next = toDo?.steps[0];
  const { currency, locale } = workshop;
  const money = (minor: number) => formatMoney(minor, currency, locale);
  const holidays = holidayChoices().find((choice) => choice.value === holidayPlace(workshop))?.label;
  const country = countryChoices(locale).find((choice) => choice.value === workshop.country)?.label;
  return (
    <>
      <PageHead
        title="Settings"
        lead="What the workshop is called, how it counts, and what customers agree to."
      >
        <LinkButton href="/workshop/people" kind="second">
          People
        </LinkButton>
      </PageHead>
      <div className="grid gap-10">
        <MissingNotice workshop={workshop} mayFillIn />
        {saved === undefined ? null : (
          <Notice kind="good" role="status">
            <p>Saved.</p>
            {next ? (
              <p>
                {'Next: '}
                <TextLink href={next.href}>{next.label.toLowerCase()}</TextLink>
                {'.'}
              </p>
            ) : null}
            {saved === 'currency' ? (
              <p>
                {`Amounts kept so far have their figures and are now in ${currency}. Go through the `}
                <TextLink href="/workshop/catalogue">price list</TextLink>, what parts cost and what carriers
                make good.
              </p>
            ) : null}
          </Notice>
        )}
        <Part
          title="Details"
          href="/workshop/settings/details"
          facts={[
            { term: 'Name', text: workshop.name },
            {
              term: 'Address',
              text: postalLines(workshop, country).join(', '),
            },
            { term: 'Mail', text: workshop.email },
            { term: 'Telephone', text: workshop.phone },
            { term: 'Where certificates hold good', text: workshop.territory },
          ]}
        />
        <Part
          title="Money and tax"
          href="/workshop/settings/money"
          facts={[
            { term: 'Currency', text: currency },
            { term: 'Prices', text: workshop.pricesIncludeTax ? 'kept with tax' : 'kept without tax' },
            { term: 'Tax number', text: workshop.taxNumber },
            { term: 'Inspection fee', text: money(workshop.inspectionFeeMinor) },
            { term: 'Return fee', text: money(workshop.returnFeeMinor) },
            { term: 'An hour at the bench', text: money(workshop.labourRateMinor) },
            { term: 'A price holds', text: `${workshop.approvalDays} days` },
            { term: 'An invoice is paid within', text: `${workshop.dueDays} days` },
            { term: 'IBAN', text: showIban(workshop.iban) },
            { term: 'Payment page', text: workshop.payLink },
            { term: 'Right to withdraw', text: WITHDRAWAL_WORDS[workshop.withdrawalRule] },
          ]}
        />
        <Part
          title="Days and paper"
          href="/workshop/settings/days"
          facts={[
            { term: 'Time zone', text: workshop.timeZone },
            { term: 'Amounts and dates', text: `as written in ${locale}` },
            { term: 'Public holidays', text: holidays ?? holidayPlace(workshop) },
            { term: 'Closing days', text: closing.length === 0 ? 'none' : String(closing.length) },
            { term: 'Bench work', text: `${workshop.capacityMinutesDay} minutes on a working day` },
            { term: 'Ready by the promise', text: `${workshop.promiseAim} of 100 units` },
            { term: 'You answer within', text: workingDaysWords(workshop.answerDays) },
            { term: 'Paper', text: workshop.paper === 'A4' ? 'A4' : 'US Letter' },
          ]}
        />
        <Part
          title="Texts"
          href="/workshop/settings/texts"
          facts={[
            { term: 'Terms', text: size(workshop.termsText) },
            { term: 'Privacy', text: size(workshop.privacyText) },
            { term: 'How to pay', text: size(workshop.paymentText) },
            {
              term: 'How to pack',
              text: lines(workshop.packingText.length),
            },
          ]}
        />
        <Part
          title="Keeping"
          href="/workshop/settings/keeping"
          facts={[
            {
              term: 'Parcels that do not come',
              text: `${workshop.parcelRemindDays === 0 ? 'no reminder' : `a reminder after ${workshop.parcelRemindDays} days`}, listed apart after ${workshop.parcelOverDays}`,
            },
            {
              term: 'Unclaimed units',
              text:
                workshop.unclaimedNotices === 0
                  ? 'no notices by themselves'
                  : `${workshop.unclaimedNotices} notices, the first after ${workshop.unclaimedAfterDays} days, then every ${workshop.unclaimedEveryDays}`,
            },
            {
              term: 'People’s data',
              text:
                workshop.keepMonths === 0
                  ? 'kept until you remove it'
                  : `kept ${workshop.keepMonths} months after a job is closed`,
            },
            {
              term: 'Last backup',
              text: lastBackup
                ? formatInstant(lastBackup.madeAt, { locale, zone: workshop.timeZone })
                : 'none yet',
            },
          ]}
        />
        <Part
          title="Carriers"
          href="/workshop/settings/carriers"
          facts={[
            {
              term: 'Sends with',
              text: carriers.length === 0 ? 'none yet' : carriers.map(({ name }) => name).join(', '),
            },
          ]}
        />
        <section>
          <h2 className="mb-3">Signing keys</h2>
          <p className="mb-3">Every certificate is signed, so that a changed copy can be told from ours.</p>
          <LinkButton href="/workshop/settings/keys" kind="second">
            See the keys
          </LinkButton>
        </section>
      </div>
    </>
  );
}

function Part({ title, href, facts }: { title: string; href: Route; facts: readonly Fact[] }): ReactNode {
  return (
    <section>
      <h2 className="mb-3">{title}</h2>
      <Facts items={facts} />
      <p className="mt-3">
        <LinkButton href={href} kind="second">
          Change {title.toLowerCase()}
        </LinkButton>
      </p>
    </section>
  );
}

const WITHDRAWAL_WORDS: Record<string, string> = {
  off: 'none is told',
  eu: 'European Union',
  uk: 'United Kingdom',
};

function size(text: string): string {
  const words = text.split(/\s+/).filter(Boolean).length;
  return words === 0 ? 'empty' : words === 1 ? '1 word' : `${words} words`;
}

function lines(count: number): string {
  return count === 0 ? 'empty' : count === 1 ? '1 line' : `${count} lines`;
}
