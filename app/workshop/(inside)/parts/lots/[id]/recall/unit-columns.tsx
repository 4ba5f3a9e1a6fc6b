import type { Column } from '@/app/ui/page/table';
import { NumberText } from '@/app/ui/words/number-text';
import { NumberLink } from '@/app/workshop/number-link';

type LotUnit = { jobNumber: string; unit: string; serial: string; customer: string };

/** Which unit a piece of a lot is in, and whose it is: the first columns of every table about a letter. */
export function unitColumns<U extends LotUnit>(): Column<U>[] {
  return [
    { head: 'Job', kind: 'rowhead', cell: (unit) => <NumberLink of="jobs" number={unit.jobNumber} /> },
    { head: 'Unit', cell: (unit) => unit.unit },
    { head: 'Serial', cell: (unit) => <NumberText text={unit.serial} /> },
    { head: 'Customer', cell: (unit) => unit.customer },
  ];
}
