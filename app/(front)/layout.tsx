import type { Metadata } from 'next';
import type { ReactNode } from 'react';
import { readWorkshop } from '@/app/read-workshop';
import { FrontFrame } from '@/app/ui/frame/front-frame';

export async function generateMetadata(): Promise<Metadata> {
  const { name, tagline } = await readWorkshop();
  return { title: { default: name, template: `%s – ${name}` }, ...(tagline ? { description: tagline } : {}) };
}

export default async function FrontLayout({ children }: { children: ReactNode }) {
  return <FrontFrame workshop={await readWorkshop()}>{children}</FrontFrame>;
}
