import { nothingHere, type OfToken, servePdf } from '@/app/serve-file';
import { readIssued } from '@/lib/warranty/read-issued';
import { jobOfToken } from '../open-job';

export async function GET(_request: Request, { params }: OfToken): Promise<Response> {
  const job = await jobOfToken((await params).token);
  const certificate = job?.certificates.at(-1);
  if (!certificate) return nothingHere();
  return servePdf(await readIssued(certificate), `certificate-${certificate.number}-${certificate.revision}`);
}
