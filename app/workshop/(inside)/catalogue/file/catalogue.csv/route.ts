import { csvAnswer } from '@/app/workshop/csv-answer';
import { requireStaff } from '@/app/workshop/who';
import { exportCatalogue } from '@/lib/catalogue/list-records';

export async function GET(): Promise<Response> {
  await requireStaff('catalogue');
  return csvAnswer('catalogue', await exportCatalogue());
}
