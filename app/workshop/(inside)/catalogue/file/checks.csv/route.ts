import { csvAnswer } from '@/app/workshop/csv-answer';
import { requireStaff } from '@/app/workshop/who';
import { exportChecks } from '@/lib/catalogue/check-file-records';
import { rolesThatMay } from '@/lib/people/rules/roles';

export async function GET(): Promise<Response> {
  await requireStaff(rolesThatMay('catalogue'));
  return csvAnswer('checks', await exportChecks());
}
