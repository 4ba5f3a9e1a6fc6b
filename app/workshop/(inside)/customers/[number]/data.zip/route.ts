import { nothingHere, type OfNumber, serveFile } from '@/app/serve-file';
import { staffActor } from '@/app/workshop/staff-actor';
import { requireStaff } from '@/app/workshop/who';
import { now } from '@/lib/clock';
import { invoiceFile } from '@/lib/invoices/invoice-file';
import { exportPerson } from '@/lib/keeping/export-person';
import { attempt } from '@/lib/outcome';

/** Everything known of one person, for the owner to hand out. */
export async function GET(_request: Request, { params }: OfNumber) {
  const staff = await requireStaff('personal-data');
  const { number } = await params;
  const made = await attempt(() =>
    exportPerson({ number, actor: staffActor(staff), now: now(), paperOf: invoiceFile }),
  );
  if (!made.ok) return nothingHere();
  return serveFile(made.value.bytes, { type: 'application/zip', name: made.value.name, download: true });
}
