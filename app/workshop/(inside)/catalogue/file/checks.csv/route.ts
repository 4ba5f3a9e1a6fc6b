import { csvAnswer } from '@/app/workshop/csv-answer';
import { requireStaff } from '@/app/workshop/who';
import { exportChecks } from '@/lib/catalogue/check-file-records';

export async function GET(): Promise<Response> {
  await requireStaff('catalogue');
  return csvAnswer('checks', await exportChecks());
}
