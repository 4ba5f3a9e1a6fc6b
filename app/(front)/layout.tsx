import type { Metadata } from 'next';
import { cache, type ReactNode } from 'react';
import { FrontFrame } from '@/app/ui/frame/front-frame';
import { readWorkshop } from '@/lib/workshop/records';

const workshopOfThisRequest = cache(() => readWorkshop());

export async function generateMetadata(): Promise<Metadata> {
  const { name, tagline } = await workshopOfThisRequest();
  return { title: { default: name, template: `%s – ${name}` }, ...(tagline ? { description: tagline } : {}) };
}

export default async function FrontLayout({ children }: { children: ReactNode }) {
  return <FrontFrame workshop={await workshopOfThisRequest()}>{children}</FrontFrame>;
}
