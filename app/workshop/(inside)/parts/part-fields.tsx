import { CountField } from '@/app/ui/forms/count-field';
import { TermField } from '@/app/ui/forms/term-field';
import { TextField } from '@/app/ui/forms/text-field';

type Known = { code: string; name: string; term: string | null; reorderAt: number | null };

/** What the parts list knows of a part, for adding and for changing. */
export function PartFields({ known }: { known?: Known | undefined }) {
  return (
    <>
      <TextField name="code" label="Code" mono width="half" autoComplete="off" defaultValue={known?.code} />
      <TextField name="name" label="Part" width="half" autoComplete="off" defaultValue={known?.name} />
      <TermField
        name="term"
        label="Supplier’s own warranty"
        hint="Given on to the customer where it is longer. Empty for none."
        defaultValue={known?.term ?? null}
      />
      <CountField
        name="reorderAt"
        label="Order again at"
        hint="Marked as low at this many pieces or fewer, over all lots. Empty for a part you keep in stock no more."
        optional
        defaultValue={known ? (known.reorderAt ?? '') : 0}
      />
    </>
  );
}
