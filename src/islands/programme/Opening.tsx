/** Where a week is pasted or opened, and how it was understood, before it comes into the programme. */
import { useState } from 'preact/hooks';
import type { Opening } from './opening.state.ts';
import { PasteEntry } from './PasteEntry.tsx';
import type { ProgrammeState } from './programme.state.ts';
import { Understood } from './Understood.tsx';

export function ProgrammeOpening({ state }: { readonly state: ProgrammeState }) {
  const { opening } = state;
  if (!opening.isOpen.value) return null;
  return (
    <section
      class="entry pasting"
      aria-label="Paste or open"
      onKeyDown={(event) => {
        if (event.key === 'Escape') opening.close('version-first');
      }}
    >
      <PasteEntry
        label="Paste a week, as you write it or from a spreadsheet"
        rows={7}
        accept=".csv,.tsv,.txt,.xlsx,.ods,.json,text/csv,application/json"
        opening={opening}
        onText={opening.setText}
      >
        “Mon squat 4x6 80% 2 RIR”, a table with or without a header, or a file of either, CSV or a workbook. Nothing is
        taken before you have seen how it was understood.
      </PasteEntry>
      {opening.written.value && <Understood opening={opening} written={opening.written.value} />}
      <Take opening={opening} hasSecond={state.draft.value.second !== null} />
    </section>
  );
}

function Take({ opening, hasSecond }: { readonly opening: Opening; readonly hasSecond: boolean }) {
  const [isSecond, setSecond] = useState(false);
  const which = hasSecond && isSecond ? 'second' : 'first';
  const name = which === 'first' ? 'version one' : 'version two';
  const isReady = opening.offered.value.length > 0 && !opening.isReading.value;
  return (
    <>
      {hasSecond && (
        <label class="choice">
          <input type="checkbox" checked={isSecond} onChange={(event) => setSecond(event.currentTarget.checked)} />
          <span>It is for version two</span>
        </label>
      )}
      <p class="buttons">
        <button type="button" disabled={!isReady} onClick={() => opening.take(which, 'replace')}>
          Replace {name}
        </button>
        <button type="button" disabled={!isReady} onClick={() => opening.take(which, 'below')}>
          Add below
        </button>
        <button type="button" onClick={() => opening.close('version-first')}>
          Cancel
        </button>
      </p>
    </>
  );
}
