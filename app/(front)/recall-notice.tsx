import type { ReactNode } from 'react';
import { Notice } from '@/app/ui/page/notice';
import type { RecalledPiece } from '@/lib/bench/stored-recalls';
import { dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { LOCAL_RULES_FIRST } from '@/lib/parcels/rules/battery';
import type { WorkshopCard } from '@/lib/workshop/card';

type Props = {
  pieces: readonly RecalledPiece[];
  workshop: WorkshopCard;
  /** where to answer, in one sentence */
  answer: ReactNode;
};

/** What is wrong with a part in a unit that is with its customer, in the words of the letter about its lot; nothing where nothing is. */
export function RecallNotice({ pieces, workshop, answer }: Props) {
  return pieces.map(({ part, lot, isCell, recalledAt, text }) => (
    <Notice
      key={`${part}, ${lot}`}
      kind="stop"
      heading={
        isCell
          ? 'Please stop using this unit, do not charge it and do not post it'
          : 'Please stop using this unit'
      }
    >
      <p>{`We fitted this part: ${part}, lot ${lot}. We stopped its lot on ${formatDay(dayInZone(recalledAt, workshop.timeZone), workshop.locale, 'short')}.`}</p>
      <p className="written">{text}</p>
      {/* The letter is the owner's to word; that a cell in doubt does not travel is not (ADR, special provision 376). */}
      {isCell ? <p>{`A cell in doubt must not travel as an ordinary parcel. ${LOCAL_RULES_FIRST}`}</p> : null}
      <p>{answer}</p>
    </Notice>
  ));
}
