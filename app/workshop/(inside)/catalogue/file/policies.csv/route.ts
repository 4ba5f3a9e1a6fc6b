import { csvAnswer } from '@/app/workshop/csv-answer';
import { requireStaff } from '@/app/workshop/who';
import { exportPolicies } from '@/lib/catalogue/policy-file-records';

export async function GET(): Promise<Response> {
  await requireStaff('catalogue');
  return csvAnswer('policies', await exportPolicies());
}
