import { showNumber } from '@/lib/numbers/job-number';
import { TextLink } from '../page/text-link';

/**
 * Why a check is on its sheet: the claim that taught it, with the way to it.
 *
 * ```tsx
 * {check.lesson ? <p><LessonLink claim={check.lesson} /></p> : null}
 * ```
 */
export function LessonLink({ claim }: { claim: string }) {
  return <TextLink href={`/workshop/claims/${claim}`}>{`Learned from claim ${showNumber(claim)}`}</TextLink>;
}
