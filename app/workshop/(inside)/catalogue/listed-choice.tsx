import { RadioGroup } from '@/app/ui/forms/choices';

/** Whether customers see a model or a repair on the price list and may book it; a new one is listed. */
export function ListedChoice({ known }: { known: { isListed: boolean } | undefined }) {
  return (
    <RadioGroup
      name="isListed"
      label="On the price list"
      defaultValue={known?.isListed === false ? 'no' : 'yes'}
      choices={[
        { value: 'yes', label: 'Yes' },
        {
          value: 'no',
          label: 'No',
          hint: 'Nobody can book it; jobs and certificates of it stay as they are.',
        },
      ]}
    />
  );
}
