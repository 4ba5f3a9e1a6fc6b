import type { Metadata } from 'next';
import { nothingHere } from '@/app/nothing-here';
import { LinkButton } from '@/app/ui/page/button';
import { PageHead } from '@/app/ui/page/page-head';
import { readPublicKeys } from '@/lib/warranty/genuine';
import { readChain } from '@/lib/warranty/records';
import { readToken } from '@/lib/warranty/signature';
import { CertificateView } from '../../certificate/[number]/certificate-view';

export const metadata: Metadata = { title: 'Certificate', robots: { index: false, follow: false } };

type Props = { params: Promise<{ token: string }> };

/** Where the code on a certificate leads: the signature is checked, and what was signed is shown. */
export default async function CodePage({ params }: Props) {
  const { token } = await params;
  const reading = readToken(token, await readPublicKeys());
  if (!reading.valid) return <NotSigned />;
  const chain = await readChain(reading.certificate.number);
  if (!chain) nothingHere();
  const asked = chain.revisions.find((each) => each.revision === reading.certificate.revision);
  if (!asked) nothingHere();
  return <CertificateView chain={chain} asked={asked} serial={asked.serialTyped} />;
}

function NotSigned() {
  return (
    <>
      <PageHead
        title="This code is not one of ours as it stands"
        lead="A smudge, a fold, or a link that was cut short is enough. It says nothing about you or your unit."
        next="scan it again in better light, or type the number from the certificate. Both are free."
      />
      <p className="page-actions">
        <LinkButton href="/certificate">Type the number</LinkButton>
      </p>
    </>
  );
}
