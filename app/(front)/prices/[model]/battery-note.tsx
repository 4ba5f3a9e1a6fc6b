import { Notice } from '@/app/ui/page/notice';
import type { ModelPage } from '@/lib/catalogue/records';
import { LOCAL_RULES_FIRST } from '@/lib/parcels/rules/battery';

/** What to know before a unit with a battery is posted; nothing for one without. */
export function BatteryNote({ model }: { model: ModelPage }) {
  if (model.battery === 'none') return null;
  const size = model.battery === 'lithium-ion' && model.batteryWh !== null ? ` of ${model.batteryWh} Wh` : '';
  const kind = model.battery === 'lithium-ion' ? `a lithium battery${size}` : 'a button cell';
  return (
    <div className="mt-10">
      <Notice kind="warn" heading="Before you post it">
        <p>
          This unit holds {kind}. A sound one travels in the unit. If it is swollen, leaks, gets hot by
          itself, got wet or was called back by its maker, do not post it: it can set a parcel on fire. The
          booking asks you about it and says what to do instead.
        </p>
        <p>{LOCAL_RULES_FIRST}</p>
      </Notice>
    </div>
  );
}
