import { ActionForm } from '@/app/ui/forms/action-form';
import { Checkbox } from '@/app/ui/forms/choices';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { formatDay } from '@/lib/calendar/format';
import type { PersonView } from '@/lib/keeping/person-view';
import {
  REMOVAL_SENTENCES,
  type RemovalFacts,
  type RemovalProblem,
  removalProblems,
  WHAT_STAYS,
} from '@/lib/keeping/rules/retention';
import { showNumber } from '@/lib/numbers/job-number';
import type { WorkshopCard } from '@/lib/workshop/card';
import { removeData } from './actions';

type DataProps = { number: string; person: PersonView; workshop: WorkshopCard };

/** A copy of somebody's data to hand out, and its removal; for the owner. */
export function DataPart({ number, person, workshop }: DataProps) {
  if (person.email === '') return null;
  const { removal } = person;
  const shut = removalProblems(removal, true);
  return (
    <section aria-labelledby="data">
      <h2 id="data">This person’s data</h2>
      <p className="max-w-[42rem]">
        Somebody who asks what you keep of them gets a copy, usually within a month (GDPR Articles 12 and 15;
        your local law comes first). Be sure that it is they who ask: send the copy to the address above, or
        ask for something only they know.
      </p>
      <p>
        <TextLink href={`/workshop/customers/${number}/data.zip`} file>
          Everything as one file (ZIP)
        </TextLink>
      </p>
      <h3>What stays after removal</h3>
      <ul className="plain-list max-w-[42rem]">
        {WHAT_STAYS.map((each) => (
          <li key={each.what}>
            <strong>{each.what}</strong>
            {`: ${each.why}`}
          </li>
        ))}
      </ul>
      {shut.length > 0 ? (
        <>
          <p>Removal is not open yet.</p>
          <ul className="plain-list">
            {shut.map((problem) => (
              <li key={problem}>
                {REMOVAL_SENTENCES[problem]}{' '}
                {whatWaits(problem, removal).map((each) => (
                  <span key={each}>
                    <NumberText text={showNumber(each)} />{' '}
                  </span>
                ))}
              </li>
            ))}
          </ul>
        </>
      ) : (
        <ActionForm action={removeData.bind(null, number)} label="Remove this person’s data">
          <ConfirmButton
            label="Remove this person’s data"
            question="Remove name, address, messages and photos for good?"
            confirm="Yes, remove them"
            consequence="Cannot be undone, and no copy is kept here. Backups made before still hold it until they are replaced."
          >
            {removal.coverUntil ? (
              <Checkbox
                name="cover"
                label={`I know that cover lives until ${formatDay(removal.coverUntil, workshop.locale, 'short')}, and can then be claimed only with the certificate in hand`}
                hint="The customer was told, or asked for it: a lost certificate can no longer be sent again by mail."
              />
            ) : null}
          </ConfirmButton>
        </ActionForm>
      )}
    </section>
  );
}

/** The numbers behind a sentence; cover is confirmed beside the button instead. */
function whatWaits(problem: RemovalProblem, facts: RemovalFacts): readonly string[] {
  switch (problem) {
    case 'open-job':
      return facts.openJobs;
    case 'open-quote':
      return facts.openQuotes;
    case 'open-claim':
      return facts.openClaims;
    case 'sought-parcel':
      return facts.soughtParcels;
    case 'postage-asked':
      return facts.postageAsked;
    case 'live-cover':
      return facts.liveCover;
  }
}
