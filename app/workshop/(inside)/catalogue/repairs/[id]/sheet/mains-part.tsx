import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { Notice } from '@/app/ui/page/notice';
import { cautionOf } from '@/lib/bench/rules/cautions';
import { hasMainsChecks } from '@/lib/bench/rules/mains-checks';
import { addReadyChecksAction } from './actions';

type Props = {
  repairId: string;
  version: number;
  checks: readonly { caution: string | null }[];
};

/** The template of electrical safety checks, offered on the sheets of models that plug into the mains. */
export function MainsPart({ repairId, version, checks }: Props) {
  const isThere = hasMainsChecks(checks);
  const test = cautionOf('mains-test');
  const charge = cautionOf('mains-capacitors');
  return (
    <section aria-labelledby="mains" className="mt-12 grid gap-4">
      <h2 id="mains">This model plugs into the mains</h2>
      {[test, charge].map((caution) =>
        caution ? (
          <Notice key={caution.key} kind="warn" heading={caution.title}>
            <p>{caution.text}</p>
          </Notice>
        ) : null,
      )}
      {isThere ? (
        <p>The mains safety checks are on the sheet.</p>
      ) : (
        <ActionForm
          action={addReadyChecksAction.bind(null, repairId, version)}
          label="Put the mains safety checks on the sheet"
        >
          <p className="max-w-text">
            Put the mains safety checks on the sheet for the protection class printed on the unit. Only a
            person competent for such tests may sign them; local rules and the standard in force come first.
          </p>
          <div className="flex flex-wrap gap-4">
            <SubmitButton
              kind="second"
              name="ready"
              value="mains-1"
              label="Put on: class I, with protective conductor"
              consequence={`Adds five checks and makes version ${version + 1}.`}
            />
            <SubmitButton
              kind="second"
              name="ready"
              value="mains-2"
              label="Put on: class II, double insulated"
              consequence={`Adds three checks and makes version ${version + 1}.`}
            />
          </div>
        </ActionForm>
      )}
    </section>
  );
}
