import type { Metadata } from 'next';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { requireStaff } from '../../../../who';
import { PinTableForm } from '../pin-table-form';

export const metadata: Metadata = { title: 'Add a pin table' };

export default async function NewPinTablePage() {
  await requireStaff('catalogue');
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/catalogue/pin-tables">Pin tables</TextLink>}
        title="Add a pin table"
        lead="Paste the pins of a connector; the pairs to probe follow from them."
      />
      <PinTableForm label="Add a pin table" replaces={null} />
    </>
  );
}
