import { Slip, SlipList } from '@/app/ui/docket/slip';
import { LinkButton } from '@/app/ui/page/button';
import { Tag } from '@/app/ui/page/tag';
import type { LotFigure } from '@/lib/returns/lot-figures';
import { EVIDENCE_WORD } from '@/lib/returns/rules/evidence-words';
import { shareWords } from '@/lib/returns/rules/share-words';

/** Lots that come back more often than the rest; nothing at all while there are none. */
export function LotsToday({ lots, locale }: { lots: readonly LotFigure[]; locale: string }) {
  if (lots.length === 0) return null;
  return (
    <section aria-labelledby="lots">
      <h2 id="lots">Lots that come back more than the rest</h2>
      <SlipList label="Lots that come back more than the rest">
        {lots.map(({ id, code, part, comparison }) => (
          <Slip
            key={id}
            href={`/workshop/returns/by/lot/${id}`}
            kind="Lot"
            number={code}
            title={part}
            tag={
              <LinkButton href={`/workshop/parts/lots/${id}`} kind="second">
                See its units
              </LinkButton>
            }
            facts={[
              <Tag key="evidence" tone={comparison.evidence === 'strong' ? 'stop' : 'warn'}>
                {EVIDENCE_WORD[comparison.evidence]}
              </Tag>,
              `came back: ${shareWords(comparison.ours, locale)}`,
              `the rest: ${shareWords(comparison.rest, locale)}`,
            ]}
          />
        ))}
      </SlipList>
    </section>
  );
}
