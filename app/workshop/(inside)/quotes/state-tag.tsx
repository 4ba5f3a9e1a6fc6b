import { Tag, type TagTone } from '@/app/ui/page/tag';
import { REQUEST_WORDS, type RequestState } from '@/lib/quotes/rules/request-states';

const TONES: Record<RequestState, TagTone> = {
  asked: 'now',
  questioned: 'waiting',
  quoted: 'waiting',
  accepted: 'good',
  booked: 'good',
  declined: 'note',
  lapsed: 'note',
  'turned-down': 'stop',
};

/** Where a quote that was asked for stands, as the workshop calls it. */
export function QuoteStateTag({ state }: { state: RequestState }) {
  return <Tag tone={TONES[state]}>{REQUEST_WORDS[state].label}</Tag>;
}
