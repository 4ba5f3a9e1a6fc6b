import { nothingHere, serveFile } from '@/app/serve-file';
import { readIssued } from '@/lib/warranty/read-issued';
import { jobOfToken } from '../open-job';

export async function GET(
  _request: Request,
  { params }: { params: Promise<{ token: string }> },
): Promise<Response> {
  const job = await jobOfToken((await params).token);
  const certificate = job?.certificates.at(-1);
  if (!certificate) return nothingHere();
  return serveFile(await readIssued(certificate), {
    type: 'application/pdf',
    name: `certificate-${certificate.number}-${certificate.revision}.pdf`,
  });
}
