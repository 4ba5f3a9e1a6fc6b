import { ActionForm } from '@/app/ui/forms/action-form';
import { CountField } from '@/app/ui/forms/count-field';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { Table } from '@/app/ui/page/table';
import { Tag } from '@/app/ui/page/tag';
import { TextLink } from '@/app/ui/page/text-link';
import type { UsualPart } from '@/lib/catalogue/usual-parts';
import { putPartAction, removePartAction } from './actions';

type Props = {
  repairId: string;
  parts: readonly UsualPart[];
  /** Codes to choose from. */
  codes: readonly string[];
  mayChange: boolean;
};

/** The parts a repair usually needs, with what is in stock of them, and a small form to change the list. */
export function UsualParts({ repairId, parts, codes, mayChange }: Props) {
  return (
    <>
      <Table
        caption="Parts usually needed"
        captionHidden
        rows={parts}
        rowKey={(part) => part.partId}
        empty="No part is usually needed."
        columns={[
          {
            head: 'Part',
            kind: 'rowhead',
            cell: (part) => (
              <>
                <TextLink href={`/workshop/parts/${part.partId}`}>{part.code}</TextLink>{' '}
                <span className="font-normal">{part.name}</span>
              </>
            ),
          },
          { head: 'Pieces', cell: piecesOf },
          ...(mayChange
            ? [
                {
                  head: 'Change',
                  kind: 'action' as const,
                  cell: (part: UsualPart) => (
                    // A form asks for no width of its own, so the column would be too narrow for its button.
                    <div className="w-28">
                      <ActionForm
                        action={removePartAction.bind(null, repairId, part.partId)}
                        label={`Remove ${part.code}`}
                      >
                        <SubmitButton kind="second" label="Remove" busy="Removing…" />
                      </ActionForm>
                    </div>
                  ),
                },
              ]
            : []),
        ]}
      />
      {mayChange ? (
        <div className="mt-6">
          <ActionForm action={putPartAction.bind(null, repairId)} label="Add a part">
            <TextField
              name="code"
              label="Part code"
              hint="A code that is on the list already gets the new number of pieces."
              mono
              width="half"
              autoComplete="off"
              list={codes}
            />
            <CountField name="quantity" label="Pieces" defaultValue={1} />
            <SubmitButton
              kind="second"
              label="Keep this part"
              busy="Keeping…"
              consequence="Nothing is taken from stock; that happens on the job."
            />
          </ActionForm>
        </div>
      ) : null}
    </>
  );
}

function piecesOf({ quantity, inStock }: UsualPart) {
  if (inStock >= quantity) return `${quantity} of ${inStock} in stock`;
  return (
    <>
      {quantity} <Tag tone="warn">{inStock === 0 ? 'none in stock' : `only ${inStock} in stock`}</Tag>
    </>
  );
}
