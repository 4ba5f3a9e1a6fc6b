import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { showNumber } from '@/lib/numbers/job-number';

type NumberLinkProps = {
  of: 'jobs' | 'quotes' | 'claims';
  number: string;
  /** where on its page to lead */
  part?: string;
};

/**
 * The number of a job, a quote or a claim, leading to its page of the workshop.
 *
 * ```tsx
 * <NumberLink of="jobs" number={row.jobNumber} part="money" />
 * ```
 */
export function NumberLink({ of, number, part }: NumberLinkProps) {
  return (
    <TextLink href={`/workshop/${of}/${number}${part ? `#${part}` : ''}`}>
      <NumberText text={showNumber(number)} />
    </TextLink>
  );
}
