import { newFormKey } from '@/app/form-key';
import { ActionForm } from '@/app/ui/forms/action-form';
import { PhotosField } from '@/app/ui/forms/photos-field';
import { SubmitBar, SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { Notice } from '@/app/ui/page/notice';
import { workingDaysWords } from '@/lib/calendar/working';
import { MOST_PHOTOS } from '@/lib/quotes/rules/request-answers';
import { CUSTOMER_MAY_WRITE } from '@/lib/quotes/rules/request-states';
import { Messages, messageConsequence } from '../../messages';
import { answer } from './actions';
import type { PartProps } from './part-props';

/** What the workshop wants to know, and the form for the answer. */
export function QuestionPart({ quote, token, workshop }: PartProps) {
  const lastOwn = quote.messages.findLastIndex(({ author }) => author === 'customer');
  const questions = quote.messages.slice(lastOwn + 1);
  return (
    <section className="approval" aria-labelledby="question">
      <h2 id="question">
        {questions.length === 1 ? 'What we want to know' : 'What we want to know from you'}
      </h2>
      {questions.map((question) => (
        <p key={question.id} className="written">
          {question.text}
        </p>
      ))}
      <ActionForm action={answer.bind(null, token)} hidden={{ formKey: newFormKey() }} label="Your answer">
        <TextArea name="text" label="Your answer" maxLength={4000} rows={5} />
        <PhotosField label="Photos that show it" most={MOST_PHOTOS} optional />
        <SubmitBar
          label="Send the answer"
          consequence={`We go on within ${workingDaysWords(workshop.answerDays)}. It costs nothing.`}
        />
      </ActionForm>
    </section>
  );
}

/** Why the workshop cannot repair it, in its own words. */
export function TurnedDownPart({ quote, workshop }: PartProps) {
  const reason = quote.messages.findLast(({ author }) => author === 'staff');
  if (!reason) return null;
  return (
    <Notice kind="note" heading={`What ${workshop.name} says`}>
      <p className="written">{reason.text}</p>
    </Notice>
  );
}

/** Everything written about the quote, and, while it is open, a way to write more. */
export function MessagesPart({ quote, token, workshop }: PartProps) {
  const { state } = quote.request;
  const mayWrite = CUSTOMER_MAY_WRITE.includes(state) && state !== 'questioned';
  if (!mayWrite && quote.messages.length === 0) return null;
  return (
    <Messages messages={quote.messages} workshop={workshop}>
      {mayWrite ? (
        <ActionForm action={answer.bind(null, token)} hidden={{ formKey: newFormKey() }} label="Message">
          <TextArea name="text" label={LABELS[state] ?? 'Write to us about this'} maxLength={4000} rows={4} />
          <PhotosField label="More photos" most={MOST_PHOTOS} optional />
          <SubmitButton kind="second" label="Send the message" consequence={messageConsequence(workshop)} />
        </ActionForm>
      ) : null}
    </Messages>
  );
}

const LABELS: Record<string, string> = {
  asked: 'Something to add?',
  quoted: 'A question about the price, or something you want changed?',
  accepted: 'Something to say before you book?',
  declined: 'Something you want changed?',
  lapsed: 'Ask for a new price',
};
