import type { JobRecord } from '@/lib/jobs/records';
import type { WorkshopCard } from '@/lib/workshop/card';

export type PartProps = { job: JobRecord; token: string; workshop: WorkshopCard };
export type Revision = NonNullable<JobRecord['quotes'][number]>['revisions'][number];
