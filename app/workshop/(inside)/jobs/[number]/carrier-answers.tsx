import { Table } from '@/app/ui/page/table';
import { Tag } from '@/app/ui/page/tag';
import { problemSentences, unsaidSentence } from '@/lib/parcels/rules/carrier-sentences';
import {
  askCarrier,
  type Carrier,
  type CarrierAnswer,
  type PackedParcel,
} from '@/lib/parcels/rules/carriers';
import { kilogramText } from '@/lib/parcels/rules/measures';

type Props = {
  carriers: readonly Carrier[];
  parcel: PackedParcel;
  money: { currency: string; locale: string };
};

/** What every carrier of the workshop says to the parcel as it is kept: the weight that counts, and why it does not take it. */
export function CarrierAnswers({ carriers, parcel, money }: Props) {
  return (
    <Table
      caption="What each carrier says to this parcel"
      rows={carriers.map((carrier) => askCarrier(carrier, parcel))}
      rowKey={(answer) => answer.carrier.name}
      empty="No carriers are on the workshop’s list yet. Any name can be typed above."
      columns={[
        { head: 'Carrier', kind: 'rowhead', cell: (answer) => answer.carrier.name },
        { head: 'Weight that counts', cell: weightWords },
        { head: 'Takes it', cell: (answer) => <Answer answer={answer} money={money} /> },
      ]}
    />
  );
}

function weightWords({ chargeable, byVolume, carrier }: CarrierAnswer): string {
  if (chargeable === null || byVolume === null) return 'not known yet';
  return `${kilogramText(chargeable)} (by volume ${kilogramText(byVolume)}, cm³ / ${carrier.volume.divisor})`;
}

function Answer({ answer, money }: { answer: CarrierAnswer; money: Props['money'] }) {
  const sentences = problemSentences(answer, money);
  const unsaid = unsaidSentence(answer.unsaid);
  return (
    <>
      {sentences.length > 0 ? (
        <>
          <Tag tone="warn">no</Tag> {sentences.join(' ')}
        </>
      ) : (
        <Tag tone="good">{`yes, by ${answer.carrier.kind === 'road' ? 'road' : 'post'}`}</Tag>
      )}
      {unsaid === '' ? null : ` ${unsaid}`}
    </>
  );
}
