import { nothingHere, servePdf } from '@/app/serve-file';
import { requireStaff } from '@/app/workshop/who';
import { certificateFile } from '@/lib/warranty/certificate-file';
import { readIssued } from '@/lib/warranty/read-issued';

type Context = { params: Promise<{ id: string }> };

/** One revision of a certificate, exactly as it was issued. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  await requireStaff('take-in');
  const certificate = await certificateFile((await params).id);
  if (!certificate) return nothingHere();
  return servePdf(await readIssued(certificate), `certificate-${certificate.number}-${certificate.revision}`);
}
