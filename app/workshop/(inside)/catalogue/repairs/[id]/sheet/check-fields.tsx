import { RadioGroup } from '@/app/ui/forms/choices';
import { Select } from '@/app/ui/forms/select';
import { TextArea } from '@/app/ui/forms/text-area';
import { TextField } from '@/app/ui/forms/text-field';
import { CAUTION_KEYS, cautionOf } from '@/lib/bench/rules/cautions';
import type { CheckDraft } from '@/lib/bench/rules/check-problems';
import type { ConnectorChoice } from './connector-choices';

const CONNECTOR_KIND = {
  value: 'connector',
  label: 'A connector sheet',
  hint: 'Every pin and neighbouring pair, on a drawing of the pins. Choose the connector.',
};

type Props = {
  known?: CheckDraft | undefined;
  /** Connectors to choose from; without any, connector sheets are not offered. */
  connectors?: readonly ConnectorChoice[] | undefined;
};

/** One check, for adding and for changing. Fields its kind does not use are left alone. */
export function CheckFields({ known, connectors = [] }: Props) {
  const failing = known?.choices.filter((choice) => !known.passing.includes(choice));
  return (
    <>
      <TextField
        name="label"
        label="What is checked"
        hint="Printed on the certificate’s second page."
        maxLength={160}
        autoComplete="off"
        defaultValue={known?.label}
      />
      <RadioGroup
        name="kind"
        label="What is recorded"
        defaultValue={known?.kind ?? 'tick'}
        choices={[
          { value: 'tick', label: 'A tick', hint: 'Done and right, or not.' },
          {
            value: 'reading',
            label: 'A reading',
            hint: 'A number with a unit and limits. Fill in unit and limits.',
          },
          {
            value: 'choice',
            label: 'A choice',
            hint: 'One of a few answers. Fill in which pass and which fail.',
          },
          ...(connectors.length > 0 ? [CONNECTOR_KIND] : []),
        ]}
      />
      <TextField name="help" label="How to do it" optional maxLength={200} defaultValue={known?.help} />
      <div className="grid gap-6 sm:grid-cols-3">
        <TextField
          name="unit"
          label="Unit"
          optional
          hint="Like V, mA or Ω."
          defaultValue={known?.unit ?? ''}
        />
        <TextField
          name="low"
          label="Lowest that passes"
          optional
          inputMode="decimal"
          hint="Empty for none."
          defaultValue={known?.low ?? ''}
        />
        <TextField
          name="high"
          label="Highest that passes"
          optional
          inputMode="decimal"
          hint="Empty for none."
          defaultValue={known?.high ?? ''}
        />
      </div>
      <div className="grid gap-6 sm:grid-cols-2">
        <TextArea
          name="passing"
          label="Answers that pass"
          hint="One a line."
          optional
          rows={3}
          defaultValue={known?.passing.join('\n')}
        />
        <TextArea
          name="failing"
          label="Answers that fail"
          hint="One a line."
          optional
          rows={3}
          defaultValue={failing?.join('\n')}
        />
      </div>
      {connectors.length > 0 ? (
        <Select
          name="pinTable"
          label="Connector"
          optional
          width="half"
          empty="None"
          choices={connectors}
          defaultValue={known?.pinTable ?? ''}
        />
      ) : null}
      <Select
        name="caution"
        label="Caution shown beside it"
        optional
        width="half"
        empty="None"
        choices={CAUTION_KEYS.map((key) => ({ value: key, label: cautionOf(key)?.title ?? key }))}
        defaultValue={known?.caution ?? ''}
      />
    </>
  );
}
