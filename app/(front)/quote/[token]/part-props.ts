import type { QuoteRecord } from '@/lib/quotes/records';
import type { WorkshopCard } from '@/lib/workshop/card';

export type PartProps = { quote: QuoteRecord; token: string; workshop: WorkshopCard };
export type Revision = QuoteRecord['revisions'][number];
