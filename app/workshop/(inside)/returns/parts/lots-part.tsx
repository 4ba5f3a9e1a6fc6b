import { Tag } from '@/app/ui/page/tag';
import { TextLink } from '@/app/ui/page/text-link';
import type { LotFigure } from '@/lib/returns/lot-figures';
import { isFlagged, looksMade } from '@/lib/returns/rules/evidence';
import { EVIDENCE_WORD, evidenceSentence, thresholdSentence } from '@/lib/returns/rules/evidence-words';

type LotsPartProps = { lots: readonly LotFigure[]; locale: string };

/** Lots with evidence against them, each in a sentence; the others only as a number. */
export function LotsPart({ lots, locale }: LotsPartProps) {
  const flagged = lots.filter(({ comparison }) => isFlagged(comparison));
  const comparisons = lots.map(({ comparison }) => comparison);
  const young = comparisons.filter(({ evidence }) => evidence === 'too-young').length;
  return (
    <section aria-labelledby="lots">
      <h2 id="lots">Lots</h2>
      {flagged.length === 0 ? (
        <p className="max-w-[42rem]">
          {lots.length === 0
            ? 'No part of a lot has gone out in a unit yet.'
            : lots.length === 1
              ? 'Nothing speaks against the one lot that went out in units.'
              : `Nothing speaks against any of the ${lots.length} lots that went out in units.`}
          {young > 0
            ? ` ${lots.length === 1 ? 'It is' : young === 1 ? 'One of them is' : `${young} of them are`} too young to compare.`
            : null}
        </p>
      ) : (
        <ul className="grid max-w-[42rem] gap-4">
          {flagged.map(({ id, code, part, against, comparison }) => (
            <li key={id}>
              <p>
                <TextLink href={`/workshop/returns/by/lot/${id}`}>{`Lot ${code}, ${part}`}</TextLink>{' '}
                <Tag tone={comparison.evidence === 'strong' ? 'stop' : 'warn'}>
                  {EVIDENCE_WORD[comparison.evidence]}
                </Tag>
              </p>
              <p>
                {`${evidenceSentence(comparison, locale)} The rest are ${against === 'same-part' ? 'the other lots of this part' : 'all other lots, since this part has no other'}.`}
              </p>
              <p>
                <TextLink href={`/workshop/parts/lots/${id}`}>Units that carry it, and their cover</TextLink>
              </p>
            </li>
          ))}
        </ul>
      )}
      <p className="mt-4">
        <TextLink href="/workshop/returns/by/lot">All lots</TextLink>
      </p>
      {lots.length > 0 ? (
        <details className="mt-2 max-w-[42rem]">
          <summary>How lots are compared</summary>
          <p className="mt-2 text-small">{thresholdSentence(looksMade(comparisons), locale)}</p>
        </details>
      ) : null}
    </section>
  );
}
