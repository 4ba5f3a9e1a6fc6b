import type { Metadata } from 'next';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { samples } from '@/emails/samples/all';
import { previewSample } from '@/lib/mail/preview';
import { requireStaff } from '../../../who';
import { DrawnMessage } from '../drawn-message';

export const metadata: Metadata = { title: 'Samples of every message' };

export default async function SamplesPage({ searchParams }: { searchParams: Promise<{ show?: string }> }) {
  await requireStaff('mail');
  const { show } = await searchParams;
  const chosen = samples[Number(show ?? 0)] ?? samples[0];
  if (!chosen) return null;
  const drawn = await previewSample(chosen);
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/mail">Mail</TextLink>}
        title="Samples of every message"
        lead="With an invented job and your own name, texts and currency. Nothing is sent from here."
      />
      <nav aria-label="Samples">
        <ol className="columns-[16rem] gap-x-6">
          {samples.map((sample, index) => (
            <li key={sample.name} className="break-inside-avoid py-1">
              {sample === chosen ? (
                <strong aria-current="page">{sample.name}</strong>
              ) : (
                <TextLink href={`/workshop/mail/samples?show=${index}`}>{sample.name}</TextLink>
              )}
            </li>
          ))}
        </ol>
      </nav>
      <p className="mt-6">
        Subject: <strong>{drawn.subject}</strong>
      </p>
      <DrawnMessage drawn={drawn} />
    </>
  );
}
