import { Facts } from '@/app/ui/docket/facts';
import { describePeriod } from '@/lib/calendar/period';
import { coverWords } from '@/lib/catalogue/rules/cover-words';
import type { PolicyTerms } from '@/lib/warranty/rules/terms';
import { HELD_WORDS, START_WORDS } from '../words';

/** What one version of a policy promises, in words. */
export function TermsFacts({ terms }: { terms: PolicyTerms }) {
  return (
    <Facts
      items={[
        { term: 'Cover', text: `${coverWords(terms)}, from ${START_WORDS[terms.startEvent]}` },
        {
          term: 'After a covered claim',
          text: terms.renewedMinimum
            ? `at least ${describePeriod(terms.renewedMinimum)} more`
            : 'what remained runs on',
        },
        { term: 'Days here on a claim', text: HELD_WORDS[terms.heldRule] },
        {
          term: 'Last day to open a claim',
          text: `${terms.rollLastDay ? 'moves to the next working day' : 'is not moved'}, then ${terms.graceDays} days on which a person decides`,
        },
        {
          term: 'Follows the unit',
          text: terms.transferable ? 'yes, to a new holder' : 'no, only the first holder',
        },
        {
          term: 'Not covered',
          text:
            terms.exclusions.length === 0 ? (
              'nothing is left out'
            ) : (
              <ul>
                {terms.exclusions.map((exclusion) => (
                  <li key={exclusion}>{exclusion}</li>
                ))}
              </ul>
            ),
        },
      ]}
    />
  );
}
