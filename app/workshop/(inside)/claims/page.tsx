import type { Metadata } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { LinkButton } from '@/app/ui/page/button';
import { PageHead } from '@/app/ui/page/page-head';
import { pageNumber } from '@/app/ui/page/page-number';
import { Pager } from '@/app/ui/page/pager';
import { Table } from '@/app/ui/page/table';
import { Tag } from '@/app/ui/page/tag';
import { TextLink } from '@/app/ui/page/text-link';
import { StageTag } from '@/app/ui/words/stage-tag';
import { NumberLink } from '@/app/workshop/number-link';
import { type Day, daysBetween } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { pageOf } from '@/lib/numbers/page-of';
import { may } from '@/lib/people/rules/roles';
import { CLAIMS_PER_PAGE, countClaims, type ListedClaim, listClaims } from '@/lib/warranty/claim-desk';
import { causeRow } from '@/lib/warranty/rules/causes';
import { CLAIM_STANDINGS, type ClaimStanding } from '@/lib/warranty/rules/claim-standing';
import { inDays } from '@/lib/warranty/rules/cover-sentences';
import { readAnswerClock } from '@/lib/warranty/ruling-due';
import { requireStaff } from '../../who';
import { AnswerTag } from '../answer-tag';
import { RULING_WORDS, STANDING_WORDS } from './words';

export const metadata: Metadata = { title: 'Claims' };

type Search = { show?: string | string[]; page?: string | string[] };

export default async function ClaimsPage({ searchParams }: { searchParams: Promise<Search> }) {
  const who = await requireStaff('take-in');
  const search = await searchParams;
  const counts = await countClaims();
  const asked = CLAIM_STANDINGS.find((known) => known === search.show);
  const standing = asked ?? whereToBegin(counts, may(who.role, 'second-look'));
  const { page, pages } = pageOf(counts[standing], {
    page: pageNumber(search.page),
    size: CLAIMS_PER_PAGE,
  });
  const workshop = await readWorkshop();
  const { locale, timeZone } = workshop;
  const clock = await readAnswerClock(workshop, now());
  const claims = await listClaims({ standing, page, clock, timeZone });
  return (
    <>
      <PageHead
        title="Claims"
        lead="Units that came back under a certificate."
        next={STANDING_WORDS[standing].meaning}
      />
      <p>
        <LinkButton href="/workshop/claims/new" kind="second">
          Open a claim for a customer
        </LinkButton>
      </p>
      <nav aria-label="Claims by what they wait for" className="mb-6">
        <ul className="flex flex-wrap gap-x-6">
          {CLAIM_STANDINGS.map((each) => (
            <FilterLink key={each} standing={each} count={counts[each]} isChosen={each === standing} />
          ))}
        </ul>
      </nav>
      <Table
        caption={`Claims: ${STANDING_WORDS[standing].label}`}
        captionHidden
        rows={claims}
        rowKey={(claim) => claim.number}
        empty={`No claim stands at “${STANDING_WORDS[standing].label}”.`}
        columns={[
          {
            head: 'Claim',
            kind: 'rowhead',
            cell: (claim) => <NumberLink of="claims" number={claim.number} />,
          },
          {
            head: 'Unit and symptom',
            cell: (claim) => (
              <>
                {`${claim.unit}: ${claim.symptom === 'other' ? 'something else' : claim.symptom}`}
                {claim.isLate ? (
                  <span className="block">
                    <Tag tone="note">opened after cover had ended</Tag>
                  </span>
                ) : null}
              </>
            ),
          },
          { head: 'Customer', cell: (claim) => claim.customer },
          { head: 'Opened', cell: (claim) => openedWords(claim, clock.today, locale) },
          { head: 'Its job', cell: (claim) => <StageTag stage={claim.stage} /> },
          {
            head: 'Ruling',
            cell: (claim) => (
              <>
                {rulingWords(claim)}
                {claim.answer ? (
                  <span className="block">
                    <AnswerTag due={claim.answer} locale={locale} />
                  </span>
                ) : null}
              </>
            ),
          },
        ]}
      />
      <Pager page={page} pages={pages} href={(other) => `/workshop/claims?show=${standing}&page=${other}`} />
    </>
  );
}

/** The first list with something in it that the person can do; the owner's second look comes before all. */
function whereToBegin(counts: Record<ClaimStanding, number>, mayLookAgain: boolean): ClaimStanding {
  const order: ClaimStanding[] = mayLookAgain
    ? ['second-look', 'contested', 'to-rule', 'not-here', 'ruled']
    : ['contested', 'to-rule', 'second-look', 'not-here', 'ruled'];
  return order.find((standing) => counts[standing] > 0) ?? 'to-rule';
}

/** How long a unit has been on its way is counted in the list of those. */
function openedWords({ openedOn, standing }: ListedClaim, today: Day, locale: string): string {
  const shown = formatDay(openedOn, locale, 'short');
  if (standing !== 'not-here') return shown;
  const days = daysBetween(openedOn, today);
  return days === 0 ? `${shown}, today` : `${shown}, ${inDays(days)} ago`;
}

function rulingWords({ ruled }: ListedClaim): string {
  if (!ruled) return 'none yet';
  return `${RULING_WORDS[ruled.ruling]}: ${causeRow(ruled.cause).label.toLowerCase()}`;
}

function FilterLink(props: { standing: ClaimStanding; count: number; isChosen: boolean }) {
  const words = `${STANDING_WORDS[props.standing].label} (${props.count})`;
  return (
    <li className="py-2.5">
      {props.isChosen ? (
        <strong aria-current="page">{words}</strong>
      ) : (
        <TextLink href={`/workshop/claims?show=${props.standing}`}>{words}</TextLink>
      )}
    </li>
  );
}
