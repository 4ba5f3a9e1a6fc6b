import { ActionForm } from '@/app/ui/forms/action-form';
import { CheckboxGroup } from '@/app/ui/forms/choices';
import { SubmitButton } from '@/app/ui/forms/submit';
import { formatDay, formatInstant } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { may } from '@/lib/people/rules/roles';
import { type RenewalLine, renewalView } from '@/lib/warranty/renewal-view';
import { standingNaming } from '@/lib/warranty/rules/renewal-named';
import { isCoveredAtLeastPartly } from '@/lib/warranty/rules/ruling';
import { readRuling } from '@/lib/warranty/stored-ruling';
import { nameLines } from './actions';
import type { CaseProps } from './open-case';

/**
 * Which lines of the certificate a covered claim renews, named by whoever did the work, until the unit leaves. A certificate of one
 * line leaves nothing to choose.
 */
export async function RenewalPart({ found, workshop, names, who }: CaseProps) {
  const { claim, job } = found;
  const ruled = readRuling(claim);
  if (claim.state !== 'ruled' || !ruled || !isCoveredAtLeastPartly(ruled.ruling)) return null;
  if (!may(who.role, 'rule-claim')) return null;
  const lines = await renewalView({ ...found }, { workshop, now: now() });
  if (lines.length < 2) return null;
  const { locale, timeZone } = workshop;
  const by = claim.renewedNamedBy && (names.get(claim.renewedNamedBy)?.name ?? 'somebody who left');
  const named = claim.renewedNamedAt && formatInstant(claim.renewedNamedAt, { locale, zone: timeZone });
  const fitted = lines.filter(({ isFitted }) => isFitted).map(({ id }) => id);
  const stands = standingNaming(claim.renewedLines, fitted) !== null;
  return (
    <section id="renewal" aria-labelledby="renewal-head">
      <h2 id="renewal-head">What was done again</h2>
      <p>
        {named && stands
          ? `Named by ${by ?? 'somebody'}, ${named}.`
          : `${named ? 'All that was named was a part that has been put back' : 'Nobody has named it yet'}: ticked is what the customer’s symptom says.`}
      </p>
      <ActionForm
        action={nameLines.bind(null, claim.number)}
        hidden={{ version: job.version }}
        label="What was done again"
      >
        <CheckboxGroup
          name="lines"
          label="Which lines of the certificate did you do again?"
          hint="These are renewed when the unit leaves; the others only get the days back that it was here. A part that was fitted again is renewed in any case."
          defaultValues={lines.filter(({ isRenewed }) => isRenewed).map(({ id }) => id)}
          choices={lines.map((line) => ({ value: line.id, label: line.what, hint: hintOf(line, locale) }))}
        />
        <SubmitButton
          label="Keep what was done again"
          busy="Keeping…"
          consequence="The certificate that leaves with the unit says so. Nobody is told before."
        />
      </ActionForm>
    </section>
  );
}

function hintOf({ until, renewedUntil, isFitted, hasEnded }: RenewalLine, locale: string): string {
  const short = (day: RenewalLine['until']) => formatDay(day, locale, 'short');
  const ends =
    until === renewedUntil
      ? `Until ${short(until)}, renewed or not, were it posted today.`
      : `Renewed until ${short(renewedUntil)}, otherwise until ${short(until)}, were it posted today.`;
  return [
    ends,
    isFitted ? 'A part of it was fitted again.' : '',
    hasEnded ? 'It had ended when the claim was opened: for the owner to renew.' : '',
  ]
    .filter((text) => text !== '')
    .join(' ');
}
