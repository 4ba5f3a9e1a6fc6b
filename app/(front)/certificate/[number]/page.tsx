import type { Metadata } from 'next';
import { lookUpNumber } from '@/app/limit-caller';
import { nothingHere } from '@/app/nothing-here';
import { WaitALittle } from '@/app/ui/page/wait-a-little';
import { readNumber } from '@/lib/numbers/job-number';
import { readChain } from '@/lib/warranty/records';
import { CertificateView } from './certificate-view';

export const metadata: Metadata = { title: 'Certificate', robots: { index: false } };

type Props = { params: Promise<{ number: string }> };

/** What the number alone shows: the cover and its dates, and the way to a claim. The serial stays unsaid. */
export default async function CertificateNumberPage({ params }: Props) {
  const { number } = await params;
  const reading = readNumber(number);
  if (!reading.ok || reading.kind !== 'W') nothingHere();
  const sought = await lookUpNumber(reading.number, () => readChain(reading.number));
  if (!sought.allowed) return <WaitALittle seconds={sought.waitSeconds} />;
  const chain = sought.found;
  if (!chain) nothingHere();
  return <CertificateView chain={chain} asked={chain.inForce} serial={null} />;
}
