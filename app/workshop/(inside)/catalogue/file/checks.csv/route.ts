import { requireStaff } from '@/app/workshop/who';
import { exportChecks } from '@/lib/catalogue/check-file-records';
import { rolesThatMay } from '@/lib/people/rules/roles';
import { csvAnswer } from '../csv-answer';

export async function GET(): Promise<Response> {
  await requireStaff(rolesThatMay('catalogue'));
  return csvAnswer('checks', await exportChecks());
}
