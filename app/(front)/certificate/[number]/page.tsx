import type { Metadata } from 'next';
import { limitCaller } from '@/app/limit-caller';
import { nothingHere } from '@/app/nothing-here';
import { waitSentence } from '@/app/ui/forms/wait-sentence';
import { Notice } from '@/app/ui/page/notice';
import { readNumber } from '@/lib/numbers/job-number';
import { readChain } from '@/lib/warranty/records';
import { CERTIFICATE_LIMIT } from '../limit';
import { CertificateView } from './certificate-view';

export const metadata: Metadata = { title: 'Certificate', robots: { index: false } };

type Props = { params: Promise<{ number: string }> };

/** What the number alone shows: the cover and its dates, and the way to a claim. The serial stays unsaid. */
export default async function CertificateNumberPage({ params }: Props) {
  const { number } = await params;
  const limit = await limitCaller('certificate', CERTIFICATE_LIMIT);
  if (!limit.allowed) {
    return (
      <Notice kind="stop" heading="Please wait a little">
        <p>{waitSentence(limit.waitSeconds)}</p>
      </Notice>
    );
  }
  const reading = readNumber(number);
  const chain = reading.ok && reading.kind === 'W' ? await readChain(reading.number) : null;
  if (!chain) nothingHere();
  return <CertificateView chain={chain} asked={chain.inForce} serial={null} />;
}
