'use client';
import { useContext, useEffect, useRef, useState } from 'react';
import { ConnectorDrawing } from '@/app/ui/connector/connector-drawing';
import { FormContext, firstOf } from '@/app/ui/forms/form-context';
import { TextArea } from '@/app/ui/forms/text-area';
import { Table } from '@/app/ui/page/table';
import { ownPinTable, readPinTable } from '@/lib/bench/rules/read-pin-table';
import { TableFacts } from './table-facts';

/** The pasted pins and what they give: with script while they are typed, without it after “Look at it”. */
export function PinsField({ known }: { known: string }) {
  const { state } = useContext(FormContext);
  const posted = firstOf(state.values?.['text']);
  const [typed, setTyped] = useState<string | null>(null);
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const look = (event: Event) => {
      if (event.target instanceof HTMLTextAreaElement) setTyped(event.target.value);
    };
    const at = box.current;
    at?.addEventListener('input', look);
    return () => at?.removeEventListener('input', look);
  }, []);
  const text = typed ?? posted ?? known;
  return (
    <div ref={box} className="form">
      <TextArea
        name="text"
        label="Pins, one a line"
        hint="pin, name, net, row, position. Commas, semicolons, tabs or spaces separate. What is missing is taken from the order; pins of one net may read joined. “unused” at the end of a line: not followed. A line “facing”: rows face each other. A line “near 1 3”: neighbours that rows do not show."
        rows={12}
        defaultValue={known}
      />
      {text.trim() === '' ? null : <Preview text={text} />}
    </div>
  );
}

function Preview({ text }: { text: string }) {
  const { problems } = readPinTable(text);
  const table = ownPinTable({ id: 'new', name: 'the pasted table', source: '', text });
  if (!table) {
    return (
      <Table
        caption="Lines to put right"
        keep
        rows={problems}
        rowKey={(problem) => `${problem.line} ${problem.message}`}
        columns={[
          { head: 'Line', kind: 'rowhead', cell: (problem) => problem.line },
          { head: 'What is wrong', cell: (problem) => problem.message },
        ]}
      />
    );
  }
  return (
    <section aria-label="What it gives">
      <ConnectorDrawing table={table} reads={{}} />
      <TableFacts table={table} />
    </section>
  );
}
