import { requireStaff } from '@/app/workshop/who';
import { exportCatalogue } from '@/lib/catalogue/list-records';
import { rolesThatMay } from '@/lib/people/rules/roles';
import { csvAnswer } from '../csv-answer';

export async function GET(): Promise<Response> {
  await requireStaff(rolesThatMay('catalogue'));
  return csvAnswer('catalogue', await exportCatalogue());
}
